import { humidityRatio } from '../../air/humidity-ratio.ts';
import { firstNotBefore } from '../../base/first-not-before.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { integers, numbers } from '../../tables/arrow.ts';
import { weatherInstants } from '../weather-instants.ts';
import { type TypicalYear, typicalYears } from './typical-year.ts';

/** Beyond these a reading is an error of the archive; history is not looked over by the season's checks. */
const TEMP_C: readonly [number, number] = [-60, 55];
const RH: readonly [number, number] = [0.01, 1.1];

/** Outdoor air from all files in time order, readings that lack something or are not believed left out. Arrays are [readings]. */
export interface OutdoorAir {
  /** instant to which a reading belongs, ms UTC: of an hour's mean its middle */
  timeMs: Float64Array;
  tempC: Float64Array;
  /** at the site's pressure, kg/kg */
  humidityRatio: Float64Array;
  /** 1: mean of the hour around its instant; 0: observed at it */
  hourMean: Uint8Array;
  /** stretches that are an archive's typical year */
  typical: readonly TypicalYear[];
}

/**
 * The outdoor air of a season's weather files, its own and history's alike. Where two files tell of one instant the one that
 * `files` names first counts.
 *
 * @param pressurePa  of the site
 */
export function outdoorAir(loaded: LoadedSeason, pressurePa: number): OutdoorAir {
  const { weather } = loaded.tables;
  const temp = numbers(weather, 'temp_c');
  const rh = numbers(weather, 'rh');
  const flags = integers(weather, 'flags');
  const { timeMs, hourMean } = weatherInstants(loaded);
  const at = (row: number) => timeMs[row];
  const good: number[] = [];
  for (let row = 0; row < timeMs.length; row++) {
    const within = temp[row] >= TEMP_C[0] && temp[row] <= TEMP_C[1] && rh[row] >= RH[0] && rh[row] <= RH[1];
    if (within && flags[row] === 0) good.push(row);
  }
  good.sort((a, b) => at(a) - at(b) || a - b);
  const rows = good.filter((row, i) => i === 0 || at(row) !== at(good[i - 1]));
  return {
    timeMs: Float64Array.from(rows, at),
    tempC: Float64Array.from(rows, (row) => temp[row]),
    humidityRatio: Float64Array.from(rows, (row) => humidityRatio(temp[row], Math.min(1, rh[row]), pressurePa)),
    hourMean: Uint8Array.from(rows, (row) => hourMean[row]),
    typical: typicalYears(loaded.load.files),
  };
}

/** Readings that lie in a stretch and the one on either side: all that its hours rest on. */
export function airWithin(air: OutdoorAir, fromMs: number, toMs: number): OutdoorAir {
  const first = Math.max(0, firstNotBefore(air.timeMs, fromMs) - 1);
  const last = firstNotBefore(air.timeMs, toMs) + 1;
  return {
    timeMs: air.timeMs.subarray(first, last),
    tempC: air.tempC.subarray(first, last),
    humidityRatio: air.humidityRatio.subarray(first, last),
    hourMean: air.hourMean.subarray(first, last),
    typical: air.typical,
  };
}
