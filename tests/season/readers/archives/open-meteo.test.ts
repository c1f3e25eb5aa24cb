import { describe, expect, it } from 'vitest';
import { stationPressurePa } from '../../../../src/air/pressure.ts';
import { loadSeason } from '../../../../src/season/load-season.ts';
import { loadOf, noChecks, problemsOf, rowsOf } from '../load-of.ts';
import { fileOf, seasonOf } from '../season-of.ts';
import { PUBLIC, SKIP_PUBLIC } from './public-folder.ts';

// Written by hand after the API's documentation (from memory) and the form of the public file.
const place = (offset = '0', zone = 'GMT') =>
  `latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n42.0,-94.0,320.0,${offset},${zone},${zone}\n\n`;
const HOURS = 'time,temperature_2m (°C),relative_humidity_2m (%),dew_point_2m (°C),surface_pressure (hPa)\n';
const spec = fileOf('weather', 'w.csv', { format: 'open-meteo', role: 'history' });
const read = (text: string) => loadOf({ 'w.csv': text }, [spec]);

describe('Open-Meteo', () => {
  it('takes units from the headers and the offset from the place; NaN is missing', async () => {
    const { tables, load } = await read(
      `${place('-18000', 'America/Chicago')}${HOURS}2024-03-10T01:00,10.5,71,5.4,980.1\n2024-03-10T02:00,,NaN,null,x\n2024-03-10T03:00,1,2,3,4\nlater,1,2,3,4\n\ntime,temperature_2m_max (°C)\n2024-03-10,12.0\n`,
    );
    const rows = rowsOf(tables.weather);
    // One offset for all stamps, so that spring's missing hour is there.
    expect(rows.map((row) => row.time)).toEqual(['06', '07', '08'].map((hour) => `2024-03-10T${hour}:00:00.000Z`));
    expect(rows[0]).toMatchObject({ temp_c: 10.5, rh: 0.71, dew_point_c: 5.4 });
    expect(rows[0].pressure_pa).toBeCloseTo(98010, 6);
    expect(load.files[0]).toMatchObject({ rows: 4, cells: 16, kept: 8, missing: 3, rejected: 5 });
    expect(load.rejects.map((one) => [one.line, one.column])).toEqual([
      [6, 'surface_pressure (hPa)'],
      [8, null],
    ]);
  });

  it('reads °F, the earlier spelling, epoch seconds and a pressure at sea level', async () => {
    const text = `${place()}time,temperature_2m (°F),relativehumidity_2m (%),pressure_msl (hPa)\n1710032400,50,60,1013\n`;
    const [row] = rowsOf((await read(text)).tables.weather);
    expect(row.time).toBe('2024-03-10T01:00:00.000Z');
    expect(row.temp_c).toBeCloseTo(10, 9);
    // The site of the test season lies at 300 m.
    expect(row.pressure_pa).toBeCloseTo(stationPressurePa(101300, 300, 10), 6);
  });

  it('takes the block of hours, whatever stands before it; an empty line within it ends nothing', async () => {
    const now = 'time,temperature_2m (°C),relative_humidity_2m (%)\n2024-03-10T10:15,4,60\n\n';
    const days = 'time,temperature_2m_max (°C),surface_pressure_mean (hPa)\n2024-03-10,5,980\n2024-03-11,6,981\n\n';
    const [first, second] = ['2024-03-10T01:00,10.5,71,5.4,980.1\n', '2024-03-10T02:00,11.5,66,5.4,980.2\n'];
    for (const before of ['', now, days, now + days]) {
      const { tables, load } = await read(`${place()}${before}${HOURS}${first}\n${second}\n${days}`);
      expect(rowsOf(tables.weather).map((row) => [row.time, row.temp_c, row.rh])).toEqual([
        ['2024-03-10T01:00:00.000Z', 10.5, 0.71],
        ['2024-03-10T02:00:00.000Z', 11.5, 0.66],
      ]);
      expect(load.files[0]).toMatchObject({ rows: 2, cells: 8, kept: 8 });
    }
  });

  it('a spreadsheet’s empty line parts the blocks too', async () => {
    const saved = `${place()}${HOURS}2024-03-10 1:00,10.5,71,5.4,980.1\n`.replace('\n\n', '\n,,,,,\n');
    expect(rowsOf((await read(saved)).tables.weather)).toMatchObject([{ time: '2024-03-10T01:00:00.000Z', rh: 0.71 }]);
  });

  it('a row of units below the header counts as they do; without any the file is refused', async () => {
    const head = 'time,relative_humidity_2m,wind_speed_10m,temperature_2m\n';
    const { tables, load } = await read(`${place()}${head}iso8601,%,mp/h,°F\n2024-03-10T01:00,71,5.1,50\n`);
    expect(rowsOf(tables.weather)).toHaveLength(1);
    expect(rowsOf(tables.weather)[0].temp_c).toBeCloseTo(10, 9);
    expect(rowsOf(tables.weather)[0].rh).toBeCloseTo(0.71, 12);
    expect(load.files[0]).toMatchObject({ rows: 1, cells: 2, rejected: 0 });
    const [problem] = await problemsOf({ 'w.csv': `${place()}${head}2024-03-10T01:00,71,5.1,50\n` }, [spec]);
    expect(problem).toMatchObject({ code: 'FILE_UNIT', line: 4 });
    expect(problem.message).toMatch(/^does not name the unit of temperature_2m; /);
  });

  it('two downloads one below the other are refused, not read by half', async () => {
    const one = `${place()}${HOURS}2024-03-10T01:00,10.5,71,5.4,980.1\n`;
    const [problem] = await problemsOf({ 'w.csv': `${one}\n${one}` }, [spec]);
    expect(problem).toMatchObject({ code: 'FILE_FORMAT', line: 7 });
    expect(problem.message).toMatch(/several downloads/);
  });

  it('another file, several places, days only and an unknown unit are refused', async () => {
    const problem = async (text: string) => (await problemsOf({ 'w.csv': text }, [spec]))[0];
    const row = '2024-03-10T01:00,10.5,71,5.4,980.1\n';
    expect(await problem('a,b\n1,2\n')).toMatchObject({ code: 'FILE_FORMAT', line: 1 });
    const two = place().replace('GMT,GMT\n\n', 'GMT,GMT\n43.0,-95.0,300.0,0,GMT,GMT\n\n');
    expect((await problem(`${two}${HOURS}${row}`)).message).toMatch(/holds 2 places/);
    expect(await problem(`${place()}time,temperature_2m_max (°C)\n2024-03-10,3\n`)).toMatchObject({
      code: 'FILE_COLUMNS',
    });
    expect(await problem(`${place()}${HOURS.replace('°C', '°X')}${row}`)).toMatchObject({ code: 'FILE_UNIT', line: 4 });
    expect(await problem(place() + HOURS)).toMatchObject({ code: 'FILE_EMPTY' });
    expect(await problem(`${place()}${HOURS}x,1,2,3,4\n`)).toMatchObject({ code: 'FILE_ROWS' });
  });
});

describe.skipIf(SKIP_PUBLIC)('south-west Minnesota 2023 (Open-Meteo.com, ERA5, CC BY 4.0)', () => {
  const load = (columns: Record<string, { header: string; unit: string | null }> | null) =>
    loadSeason(
      seasonOf(PUBLIC, [
        fileOf('weather', 'open-meteo-44.04N95.20W438m.csv', columns === null ? { format: 'open-meteo' } : { columns }),
      ]),
      undefined,
      noChecks,
    );
  it('has no humidity, so that it is refused with the reason', async () => {
    await expect(load(null)).rejects.toThrow(
      /FILE_COLUMNS .*csv:4 has no humidity .*Without humidity nothing can be said of drying/,
    );
  });
});
