import { humidityRatioOfVapour } from '../../air/humidity-ratio.ts';
import { saturationLogSlope, saturationPressurePa } from '../../air/saturation.ts';

/** Humidity ratios of air through time; every array is [readings], time order. */
export interface HumidityLog {
  timeMs: Float64Array;
  /** kg water per kg dry air */
  ratio: Float64Array;
  /** by how much the ratio rises with the humidity, per unit of relative humidity */
  perRh: Float64Array;
  /** by how much it rises with the temperature that goes with a logged relative humidity, 1/K; 0 where a dew point told it */
  perK: Float64Array;
  tempC: Float64Array;
}

/** Temperatures of air through time; every array is [readings], time order. */
export interface TemperatureLog {
  timeMs: Float64Array;
  tempC: Float64Array;
}

/** Between readings farther apart than this, ms, nothing is told. */
const LONGEST_GAP_MS = 6 * 3_600_000;

/**
 * Humidity ratios of rows in good standing: from the relative humidity, else from the dew point.
 *
 * @param rows       columns `time`, `temp_c`, `rh`, `flags` and perhaps `dew_point_c`, time order
 * @param stationPa  of the station, Pa
 * @param counts     which moments count; all when left out
 */
export function humidityLog(
  rows: Readonly<Record<string, Float64Array>>,
  stationPa: number,
  counts: (ms: number) => boolean = () => true,
): HumidityLog {
  const { time, temp_c: temp, rh, dew_point_c: dew } = rows;
  const kept: { ms: number; ratio: number; perRh: number; perK: number; tempC: number }[] = [];
  for (let row = 0; row < time.length; row++) {
    if (!isGood(rows, row) || !counts(time[row])) continue;
    const saturation = saturationPressurePa(temp[row]);
    const byDew =
      dew !== undefined && dew[row] > -79 && dew[row] <= temp[row] + 0.5 ? saturationPressurePa(dew[row]) : 0;
    const byRh = rh[row] > 0 && rh[row] <= 1;
    const vapour = byRh ? rh[row] * saturation : byDew;
    if (!(vapour > 0)) continue;
    const ratio = humidityRatioOfVapour(Math.min(vapour, saturation), stationPa);
    kept.push({
      ms: time[row],
      ratio,
      perRh: (0.622 * saturation) / stationPa,
      perK: byRh ? ratio * saturationLogSlope(temp[row]) : 0,
      tempC: temp[row],
    });
  }
  return {
    timeMs: Float64Array.from(kept, (one) => one.ms),
    ratio: Float64Array.from(kept, (one) => one.ratio),
    perRh: Float64Array.from(kept, (one) => one.perRh),
    perK: Float64Array.from(kept, (one) => one.perK),
    tempC: Float64Array.from(kept, (one) => one.tempC),
  };
}

/** Temperatures of rows in good standing, whether a humidity was logged beside them or not. */
export function temperatureLog(
  rows: Readonly<Record<string, Float64Array>>,
  counts: (ms: number) => boolean,
): TemperatureLog {
  const kept = [...rows.time.keys()].filter((row) => isGood(rows, row) && counts(rows.time[row]));
  return {
    timeMs: Float64Array.from(kept, (row) => rows.time[row]),
    tempC: Float64Array.from(kept, (row) => rows.temp_c[row]),
  };
}

function isGood({ temp_c: temp, flags }: Readonly<Record<string, Float64Array>>, row: number): boolean {
  return !(flags?.[row] > 0) && temp[row] > -60 && temp[row] < 80;
}

/** Index of the reading before a moment and the part of the way to the next; null where they lie too far apart. */
export function placeIn(timeMs: Float64Array, ms: number, gapMs = LONGEST_GAP_MS): { at: number; part: number } | null {
  let low = 0;
  let high = timeMs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeMs[middle] <= ms) low = middle + 1;
    else high = middle;
  }
  const before = low - 1;
  if (before < 0) return null;
  if (timeMs[before] === ms) return { at: before, part: 0 };
  if (low >= timeMs.length || timeMs[low] - timeMs[before] > gapMs) return null;
  return { at: before, part: (ms - timeMs[before]) / (timeMs[low] - timeMs[before]) };
}

/** The value at a place found by `placeIn`. */
export function valueAt(values: Float64Array, { at, part }: { at: number; part: number }): number {
  return part === 0 ? values[at] : values[at] + part * (values[at + 1] - values[at]);
}
