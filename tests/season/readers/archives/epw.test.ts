import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isTypicalYear, standInYears } from '../../../../src/season/readers/archives/typical-year.ts';
import { loadOf, problemsOf, rowsOf } from '../load-of.ts';
import { fileOf } from '../season-of.ts';
import { mean, PUBLIC, publicWeather, SKIP_PUBLIC } from './public-folder.ts';

// Written by hand after the EPW data dictionary (EnergyPlus Auxiliary Programs; from memory): header lines, then year, month, day, hour, minute,
// source flags, dry bulb, dew point, relative humidity, station pressure, …
const head = (zone = '-6.0', perHour = 1) =>
  `LOCATION,Nowhere,XX,USA,hand-made,999999,42.00,-94.00,${zone},300.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,none\nCOMMENTS 2,none\nDATA PERIODS,1,${perHour},Data,Sunday, 1/ 1,12/31\n`;
const hour = (stamp: string, values = '10.0,5.0,71,98000') => `${stamp},?9?9?9,${values},0,0,300,0\n`;
const epw = fileOf('weather', 'w.epw', { format: 'epw', role: 'history' });
const read = (text: string) => loadOf({ 'w.epw': text }, [epw]);
const times = async (text: string) => rowsOf((await read(text)).tables.weather).map((row) => row.time);

describe('EPW', () => {
  it('hour 1 starts at local standard midnight; the zone is the file’s own', async () => {
    const text = `${head()}${hour('2019,7,1,1,0')}${hour('2019,7,1,24,60')}`;
    expect(await times(text)).toEqual(['2019-07-01T06:00:00.000Z', '2019-07-02T05:00:00.000Z']);
    expect(await times(head('5.5') + hour('2019,7,1,1,0'))).toEqual(['2019-06-30T18:30:00.000Z']);
  });

  it('reads °C, percent and Pa; each missing code is missing; the account adds up', async () => {
    const text = [
      head(),
      hour('2019,1,1,1,0', '-12.2,-16.1,73,99500'),
      hour('2019,1,1,2,0', '99.9,99.9,999,999999'),
      hour('2019,1,1,3,0', 'x,-5,80,98000'),
      hour('2019,2,29,4,0'),
      hour('2019,1,1,25,0'),
      '2019,1,1,5,0\n',
    ].join('');
    const { tables, load } = await read(text);
    const rows = rowsOf(tables.weather);
    expect(rows[0]).toMatchObject({ role: 'history', temp_c: -12.2, dew_point_c: -16.1, rh: 0.73, pressure_pa: 99500 });
    expect(rows[1]).toMatchObject({ temp_c: null, dew_point_c: null, rh: null, pressure_pa: null });
    expect(load.files[0]).toMatchObject({ rows: 6, cells: 24, kept: 7, missing: 4, rejected: 13, outside: 0 });
    expect(load.rejects.map((one) => [one.line, one.column, one.reason])).toEqual([
      [11, 'dry bulb', 'is no number'],
      [12, null, 'names a day that does not exist'],
      [13, null, 'has an hour outside 1 to 24'],
      [14, null, 'has 5 fields, too few for an EPW line'],
    ]);
  });

  // EPW data dictionary (from memory): missing are 99.9, 999, 999999; files converted from elsewhere have more nines.
  it('longer rows of nines are missing too, a hot hour and a deep one are not', async () => {
    const rows = ['999,9999,9999,9999999', '99.90,999.9,999.0,999999999', '49.6,-31.2,3,101900'];
    const { tables, load } = await read(head() + rows.map((values, i) => hour(`2019,1,1,${i + 1},0`, values)).join(''));
    expect(rowsOf(tables.weather).map((row) => [row.temp_c, row.rh, row.pressure_pa])).toEqual([
      [null, null, null],
      [null, null, null],
      [49.6, 0.03, 101900],
    ]);
    expect(load.files[0]).toMatchObject({ cells: 12, kept: 4, missing: 8 });
  });

  it('hours from 0 to 23 are refused, for they would stand an hour off; one stray hour 0 is a bad row', async () => {
    const days = (hours: readonly number[]) =>
      [1, 2].flatMap((day) => hours.map((one) => hour(`2019,1,${day},${one},0`))).join('');
    const all = Array.from({ length: 24 }, (_, i) => i);
    const [problem] = await problemsOf({ 'w.epw': head() + days(all) }, [epw]);
    expect(problem).toMatchObject({ code: 'FILE_FORMAT', line: 9 });
    expect(problem.message).toMatch(/hours from 0 to 23/);
    const { load } = await read(head() + hour('2019,1,1,0,0') + days(all.map((one) => one + 1)));
    expect(load.files[0]).toMatchObject({ rows: 49, rejected: 4 });
  });

  it('quarter hours end at the minute they name, or start there where none is 60', async () => {
    const ends = ['15', '30', '45', '60'].map((minute) => hour(`2019,1,1,1,${minute}`)).join('');
    const starts = ['0', '15', '30', '45'].map((minute) => hour(`2019,1,1,1,${minute}`)).join('');
    const due = ['00', '15', '30', '45'].map((minute) => `2019-01-01T06:${minute}:00.000Z`);
    expect(await times(head('-6', 4) + ends)).toEqual(due);
    expect(await times(head('-6', 4) + starts)).toEqual(due);
  });

  it('a typical year is put on one year, so that hour follows hour, and that is said', async () => {
    const text = `${head()}${hour('1986,1,31,24,0')}${hour('1977,2,1,1,0')}${hour('1977,2,28,24,0')}${hour('1985,3,1,1,0')}`;
    const { tables, load } = await read(text);
    const ms = rowsOf(tables.weather).map((row) => Date.parse(String(row.time)));
    expect([ms[1] - ms[0], ms[3] - ms[2]]).toEqual([3_600_000, 3_600_000]);
    expect(new Date(ms[0]).toISOString()).toBe('1986-02-01T05:00:00.000Z');
    expect(load.findings[0]).toMatchObject({ kind: 'clock', cells: 0, advice: null });
    expect(load.findings[0].text).toMatch(/typical year: its months come from 3 years between 1977 and 1986/);
    const season = await loadOf({ 'w.epw': text }, [{ ...epw, role: 'season' }]);
    expect(season.load.findings[0].advice).toMatch(/role: history/);
  });

  it('the stand-in year has a 29 February where the file has one, and none where not', () => {
    const day = (year: number, month: number, dayOfMonth: number) => ({ year, month, day: dayOfMonth });
    expect(standInYears([day(1977, 1, 1), day(1976, 2, 29), day(1985, 3, 1)])).toEqual([1980, 1980, 1980]);
    expect(standInYears([day(1976, 1, 1), day(1977, 2, 28), day(1985, 3, 1)])).toEqual([1977, 1977, 1977]);
    expect(standInYears([day(2001, 11, 1), day(1999, 12, 1), day(1995, 1, 1)])).toEqual([2001, 2001, 2002]);
    // Real years follow each other; 29 February of one stays as it is.
    expect(isTypicalYear([day(2015, 12, 31), day(2016, 1, 1), day(2016, 2, 29), day(2016, 3, 1)])).toBe(false);
    expect(isTypicalYear([day(2016, 1, 31), day(2015, 2, 1)])).toBe(true);
  });

  it('another file is told as that', async () => {
    const problems = async (text: string) => (await problemsOf({ 'w.epw': text }, [epw]))[0];
    expect(await problems('a,b\n1,2\n')).toMatchObject({ code: 'FILE_FORMAT', line: 1 });
    expect(await problems('LOCATION,x,y\n1,2\n')).toMatchObject({ code: 'FILE_FORMAT' });
    expect(await problems(head())).toMatchObject({ code: 'FILE_EMPTY' });
    expect(await problems(`${head()}1,2,3\n`)).toMatchObject({ code: 'FILE_ROWS', line: 9 });
  });
});

describe.skipIf(SKIP_PUBLIC)(
  'Chicago as a typical year (TMY3, US government data), held against the statistics file that came with it',
  () => {
    const table = (title: string): string[] => {
      const lines = readFileSync(join(PUBLIC, 'chicago.stat'), 'latin1').split('\n');
      return lines.slice(lines.findIndex((line) => line.includes(title)) + 1);
    };
    const row = (title: string, start: string) => {
      const line = table(title).find((one) => one.trim().startsWith(start))!;
      return line.trim().slice(start.length).trim().split(/\s+/).slice(0, 12).map(Number);
    };

    it('every hour follows the one before; months and hours of day have the means that stand there', async () => {
      const { file, time, column } = await publicWeather('chicago.epw', 'epw');
      expect(file).toMatchObject({ rows: 8760, cells: 35040, kept: 35040, missing: 0, rejected: 0, outside: 0 });
      expect(time.every((ms, i) => i === 0 || ms - time[i - 1] === 3_600_000)).toBe(true);
      // Local standard time is UTC-6.
      const local = Array.from(time, (ms) => new Date(ms - 6 * 3_600_000));
      const of = (name: string, month: number, hourOfDay: number | null) =>
        mean(
          [...column(name)].filter(
            (_, i) => local[i].getUTCMonth() === month && (hourOfDay === null || local[i].getUTCHours() === hourOfDay),
          ),
        );
      for (let month = 0; month < 12; month++) {
        // Printed to 0.1 °C and 1 %; half a digit and the rounding of the sums.
        expect(
          Math.abs(of('temp_c', month, null) - row('Monthly Statistics for Dry Bulb', 'Daily Avg')[month]),
        ).toBeLessThan(0.06);
        expect(
          Math.abs(of('dew_point_c', month, null) - row('Monthly Statistics for Dew Point', 'Daily Avg')[month]),
        ).toBeLessThan(0.06);
        expect(
          Math.abs(of('rh', month, null) * 100 - row('Monthly Statistics for Relative Humidity', 'Daily Avg')[month]),
        ).toBeLessThan(0.6);
        // `0:01- 1:00` there is the hour that starts at midnight.
        expect(
          Math.abs(of('temp_c', month, 0) - row('Average Hourly Statistics for Dry Bulb', '0:01- 1:00')[month]),
        ).toBeLessThan(0.06);
        expect(
          Math.abs(of('temp_c', month, 6) - row('Average Hourly Statistics for Dry Bulb', '6:01- 7:00')[month]),
        ).toBeLessThan(0.06);
      }
    });
  },
);
