import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { lcdOffsetMs } from '../../../../src/season/readers/archives/lcd-offset.ts';
import { lcdUnits } from '../../../../src/season/readers/archives/lcd-units.ts';
import { loadOf, problemsOf, rowsOf } from '../load-of.ts';
import { fileOf } from '../season-of.ts';
import { mean, PUBLIC, publicWeather, SKIP_PUBLIC } from './public-folder.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

// Written by hand after NOAA's documentation of LCD (from memory) and the headers of the two public files.
const V1 =
  'STATION,DATE,REPORT_TYPE,SOURCE,HourlyDewPointTemperature,HourlyDryBulbTemperature,HourlyPrecipitation,HourlyRelativeHumidity,HourlyStationPressure,REM,REPORT_TYPE,SOURCE';
const us = (date: string, type: string, dew: string, dry: string, rh: string, pressure: string, rem = '') =>
  `72219099999,${date},${type},7,${dew},${dry},T,${rh},${pressure},${rem},${type},7`;
const lcd = fileOf('weather', 'w.csv', { format: 'lcd', role: 'history' });
const read = (...lines: string[]) => loadOf({ 'w.csv': `${lines.join('\n')}\n` }, [lcd]);

describe('LCD', () => {
  it('version 1: °F and inches of mercury, marks behind numbers, local standard time also in summer', async () => {
    const { tables, load } = await read(
      V1,
      us('2020-07-01T00:52:00', 'FM-15', '50', '59', '72', '29.00'),
      us('2020-07-01T01:52:00', 'FM-15', 'M', '*', '', '29.00V'),
      us('2020-07-01T02:52:00', 'FM-15', '41', '68s', '38', '29.00s'),
      us('2020-07-01T03:52:00', 'FM-15', '41', '5O', '38', ''),
      us('2020-07-01T23:59:00', 'SOD  ', '', '', '', ''),
      us('noon', 'FM-15', '50', '59', '72', '29.00'),
    );
    const rows = rowsOf(tables.weather);
    // Chicago's standard time is UTC-6; 59 °F is 15 °C; an inch of mercury is 3386.389 Pa (NIST SP 811).
    expect(rows.map((row) => row.time)).toEqual(
      ['06', '07', '08', '09'].map((hour) => `2020-07-01T${hour}:52:00.000Z`),
    );
    expect(rows[0].temp_c).toBeCloseTo(15, 9);
    expect(rows[0].dew_point_c).toBeCloseTo(10, 9);
    expect(rows[0].rh).toBeCloseTo(0.72, 12);
    expect(rows[0].pressure_pa).toBeCloseTo(29 * 3386.389, 6);
    expect(rows[1]).toMatchObject({ temp_c: null, dew_point_c: null, rh: null, flags: 0 });
    // A suspect temperature stays, flagged; a suspect pressure alone would not take the row with it.
    expect(rows[2].temp_c).toBeCloseTo(20, 9);
    expect(rows.map((row) => row.flags)).toEqual([0, 0, 2, 0]);
    // Six rows, of which the summary of the day has no cells.
    expect(load.files[0]).toMatchObject({ rows: 6, cells: 20, kept: 11, missing: 4, rejected: 5, outside: 0 });
    expect(load.rejects.map((one) => [one.line, one.column, one.text.slice(0, 16)])).toEqual([
      [5, 'HourlyDryBulbTemperature', '5O'],
      [7, null, '72219099999,noon'],
    ]);
    expect(load.findings).toMatchObject([{ kind: 'spike', cells: 4 }, { kind: 'reject' }]);
  });

  it('version 2: °C and hPa', async () => {
    const head = V1.replace('REM,REPORT_TYPE,SOURCE', 'REM');
    const { tables } = await read(
      head,
      'USW00099999,2023-01-01T00:54:00,FM-15,343,-5,-3.3,0,88,966.5,',
      'USW00099999,2023-01-01T00:00:00,SOM,,,,,,,',
    );
    expect(rowsOf(tables.weather)).toHaveLength(1);
    expect(rowsOf(tables.weather)[0]).toMatchObject({ temp_c: -3.3, dew_point_c: -5, flags: 0 });
    expect(rowsOf(tables.weather)[0].pressure_pa).toBeCloseTo(96650, 6);
  });

  it('of the reports nearest to one hour the routine one stands; where it is lacking, another does', async () => {
    const { tables, load } = await read(
      V1,
      us('2020-01-01T00:30:00', 'FM-16', '50', '59', '72', '29'),
      us('2020-01-01T00:52:00', 'FM-15', '50', '59', '72', '29'),
      us('2020-01-01T01:00:00', 'FM-12', '50', '59', '72', '29'),
      us('2020-01-01T02:10:00', 'FM-16', '50', '59', '72', '29'),
      us('2020-01-01T02:20:00', 'FM-16', '50', '59', '72', ''),
      us('2020-01-01T02:52:00', 'FM-15', '', '', '', '29'),
      us('2020-01-01T03:00:00', 'FM-12', '50', '59', '72', '29'),
    );
    expect(rowsOf(tables.weather).map((row) => row.flags)).toEqual([8, 0, 8, 0, 8, 0, 0]);
    expect(load.totals.flagged.duplicate).toBe(4 + 4 + 3);
    expect(load.findings).toMatchObject([{ kind: 'duplicate', cells: 11 }]);
  });

  it('the METAR text tells the station’s offset, else the site’s zone does', async () => {
    const rem = (utc: string) => `MET09601/01/20 00:52:02 METAR KXXX ${utc}Z 28008KT 10SM`;
    const lines = Array.from({ length: 6 }, (_, i) =>
      us(`2020-01-31T20:5${i}:00`, 'FM-15', '50', '59', '72', '29', rem(`01015${i}`)),
    );
    // 20:50 on the 31st is 01:50Z on the 1st: five hours behind UTC.
    const { tables, load } = await read(V1, ...lines);
    expect(rowsOf(tables.weather)[0].time).toBe('2020-02-01T01:50:00.000Z');
    expect(load.findings.map((one) => one.text).join()).toMatch(/keep UTC-5, while .* is UTC-6/);
    expect(lcdOffsetMs([{ localMs: 0, remarks: rem('010552') }])).toBeNull();
  });

  it('without pressures the humidity tells the units', () => {
    // 59 °F over 50 °F is 72 %; 59 °C over 50 °C would be 66 % (Magnus formula, WMO-No. 8 (2018) annex 4.B).
    const one = { temperature: 59, dewPoint: 50, humidity: 72, pressure: Number.NaN };
    expect(lcdUnits([one])).toBe('us');
    expect(lcdUnits([{ ...one, humidity: 65 }])).toBe('si');
    expect(lcdUnits([{ ...one, humidity: Number.NaN }])).toBeNull();
  });

  it('a download that broke off within the station’s name is one bad row, and no second station', async () => {
    const row = us('2020-01-01T00:52:00', 'FM-15', '50', '59', '72', '29.00');
    const { tables, load } = await read(V1, row, row.slice(0, 6));
    expect(rowsOf(tables.weather)).toHaveLength(1);
    expect(load.rejects).toMatchObject([{ line: 3, column: null, text: row.slice(0, 6) }]);
  });

  it('another file, several stations and a file without humidity are refused', async () => {
    const problems = async (...lines: string[]) => (await problemsOf({ 'w.csv': lines.join('\n') }, [lcd]))[0];
    const row = us('2020-01-01T00:52:00', 'FM-15', '50', '59', '72', '29.00');
    expect(await problems('a,b', '1,2')).toMatchObject({ code: 'FILE_COLUMNS' });
    expect((await problems(V1, row, row.replace('72219099999', '72219099998'))).message).toMatch(/holds 2 stations/);
    expect((await problems(V1.replace('DewPoint', 'X').replace('RelativeH', 'X'), row)).message).toMatch(/no humidity/);
    expect(await problems(V1, us('2020-01-01T23:59:00', 'SOD', '', '', '', ''))).toMatchObject({ code: 'FILE_UNIT' });
    expect(await problems(V1)).toMatchObject({ code: 'FILE_EMPTY' });
  });
});

describe.skipIf(SKIP_PUBLIC)('LCD of two airports (NOAA, US government work)', () => {
  it('Lincoln, January 2023: the means that its own summary of the month gives', async () => {
    const { file, time, good, column } = await publicWeather('LCDv2_USW00014939_Lincoln_NE_2023.csv', 'lcd');
    const [temp, dew, rh, pressure] = ['temp_c', 'dew_point_c', 'rh', 'pressure_pa'].map(column);
    expect(file.cells).toBe(file.kept + file.missing + file.rejected);
    // Counted with Python's csv module: 1999 rows, of which 59 are summaries.
    expect(file).toMatchObject({ rows: 1999, cells: 4 * 1940, rejected: 0 });
    const [from, to] = [Date.UTC(2023, 0, 1, 6), Date.UTC(2023, 1, 1, 6)];
    const january = good.filter((row) => time[row] >= from && time[row] < to);
    // An hour a row: routine reports only, and the synoptic one of midnight, whose routine report the file leaves to the year before.
    expect(january.length).toBeGreaterThan(740);
    expect(january.length).toBeLessThanOrEqual(745);
    const of = (values: Float64Array) => mean(january.map((row) => values[row]));
    // SOM row: dew point -5.77 °C, humidity 75 %, station pressure 974.0 hPa; the mean temperature there is that of daily extremes.
    expect(Math.abs(of(dew) + 5.77)).toBeLessThan(0.1);
    expect(Math.abs(of(rh) * 100 - 75)).toBeLessThan(1);
    expect(Math.abs(of(pressure) - 97400)).toBeLessThan(60);
    expect(Math.abs(of(temp) + 1.86)).toBeLessThan(0.5);
  });

  it('Lincoln: temperature, humidity and pressure give the wet bulb that stands beside them', async () => {
    const { time, column } = await publicWeather('LCDv2_USW00014939_Lincoln_NE_2023.csv', 'lcd');
    const [temp, rh, pressure] = ['temp_c', 'rh', 'pressure_pa'].map(column);
    const rows: Record<string, string>[] = parse(readFileSync(join(PUBLIC, 'LCDv2_USW00014939_Lincoln_NE_2023.csv')), {
      columns: true,
    });
    const wetBulb = new Map(
      rows
        .filter((row) => row.REPORT_TYPE === 'FM-15' && row.HourlyWetBulbTemperature !== '')
        .map((row) => [Date.parse(`${row.DATE}Z`) + 6 * 3_600_000, Number(row.HourlyWetBulbTemperature)]),
    );
    const off: number[] = [];
    time.forEach((ms, row) => {
      const given = wetBulb.get(ms);
      // psychrolib takes ice below freezing.
      if (given === undefined || !(temp[row] > 1 && given > 0.5)) return;
      off.push(Math.abs(psychrolib.GetTWetBulbFromRelHum(temp[row], rh[row], pressure[row]) - given));
    });
    expect(off.length).toBeGreaterThan(100);
    off.sort((a, b) => a - b);
    // Humidity in whole percent and temperatures to 0.1 °C (0.6 °C in some reports).
    expect(off[off.length >> 1]).toBeLessThan(0.1);
    expect(off[Math.floor(off.length * 0.95)]).toBeLessThan(0.3);
  });

  it('Atlanta, January 2020: °F and inches, in Eastern standard time by its reports', async () => {
    const { file, time, good, column } = await publicWeather('LCDv1_72219013874_Atlanta_2020.csv', 'lcd');
    // Counted with Python's csv module: 1998 rows, 53 summaries.
    expect(file).toMatchObject({ rows: 1998, cells: 4 * 1945, rejected: 0 });
    // 00:52 EST.
    expect(new Date(time[0]).toISOString()).toBe('2020-01-01T05:52:00.000Z');
    const [from, to] = [Date.UTC(2020, 0, 1, 5), Date.UTC(2020, 1, 1, 5)];
    const january = good.filter((row) => time[row] >= from && time[row] < to);
    expect(january.length).toBeGreaterThan(738);
    expect(january.length).toBeLessThanOrEqual(744);
    const of = (name: string) => mean(january.map((row) => column(name)[row]));
    // SOM row: 49.2 °F (of daily extremes), station pressure 29.08 inHg.
    expect(Math.abs(of('temp_c') - (49.2 - 32) / 1.8)).toBeLessThan(0.6);
    expect(Math.abs(of('pressure_pa') / 3386.389 - 29.08)).toBeLessThan(0.02);
  });
});
