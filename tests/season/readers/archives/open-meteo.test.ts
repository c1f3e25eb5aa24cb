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
