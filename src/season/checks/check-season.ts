import { integers } from '../../tables/arrow.ts';
import { FLAGS } from '../../tables/flags.ts';
import { sensorSeries } from '../../tables/sensors.ts';
import type { Finding, SeasonTables } from '../loaded.ts';
import type { Season } from '../season.ts';
import { aboveGrain } from './grain-depth.ts';
import { outsideLimits } from './limits.ts';
import { trackOf } from './track.ts';

/** Flags by table row, to be OR-ed with those that the loader set. */
export interface SeasonFlags {
  readings: { temp: Uint8Array; moisture: Uint8Array };
  fan: Uint8Array;
  plenum: Uint8Array;
  weather: Uint8Array;
}

/**
 * Look at every reading of a loaded season and say which can be read but not believed.
 * The tables' own flag columns (duplicate, clock) are respected and not repeated.
 */
export function checkSeason(season: Season, tables: SeasonTables): { flags: SeasonFlags; findings: Finding[] } {
  const flags: SeasonFlags = {
    readings: { temp: new Uint8Array(tables.readings.numRows), moisture: new Uint8Array(tables.readings.numRows) },
    fan: new Uint8Array(integers(tables.fan, 'flags').length),
    plenum: new Uint8Array(tables.plenum.numRows),
    weather: new Uint8Array(tables.weather.numRows),
  };
  const findings: Finding[] = [];
  for (const series of sensorSeries(tables.readings)) {
    const bin = season.bins.find((one) => one.id === series.bin);
    const temp = trackOf(series.timeMs, series.tempC, series.tempFlags);
    const moisture = trackOf(series.timeMs, series.moistureWb, series.moistureFlags);
    for (const i of outsideLimits('tempC', temp.values, temp.use)) flags.readings.temp[series.rows[i]] |= FLAGS.spike;
    for (const i of outsideLimits('moistureWb', moisture.values, moisture.use)) {
      flags.readings.moisture[series.rows[i]] |= FLAGS.spike;
    }
    if (bin === undefined) continue;
    for (const i of aboveGrain(bin.grain, series.heightM, series.timeMs)) {
      if (Number.isFinite(series.tempC[i])) flags.readings.temp[series.rows[i]] |= FLAGS.headspace;
      if (Number.isFinite(series.moistureWb[i])) flags.readings.moisture[series.rows[i]] |= FLAGS.headspace;
    }
  }
  return { flags, findings };
}
