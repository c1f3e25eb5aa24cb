import { firstNotBefore } from '../../base/first-not-before.ts';
import type { SensorSeries } from '../../tables/sensors.ts';

/** A sensor's temperatures in good standing, in time order; both arrays are [readings]. */
export interface GoodReadings {
  cable: string;
  sensor: number;
  heightM: number;
  timeMs: Float64Array;
  tempC: Float64Array;
}

/** Readings of [fromMs, toMs] that carry no flag; of two at one time the first. */
export function goodReadings(series: SensorSeries, fromMs: number, toMs: number): GoodReadings {
  const { timeMs, tempC, tempFlags } = series;
  const rows: number[] = [];
  for (let row = 0; row < timeMs.length; row++) {
    if (tempFlags[row] !== 0 || Number.isNaN(tempC[row])) continue;
    if (!(timeMs[row] >= fromMs && timeMs[row] <= toMs)) continue;
    if (rows.length > 0 && timeMs[rows[rows.length - 1]] === timeMs[row]) continue;
    rows.push(row);
  }
  return {
    cable: series.cable,
    sensor: series.sensor,
    heightM: series.heightM,
    timeMs: Float64Array.from(rows, (row) => timeMs[row]),
    tempC: Float64Array.from(rows, (row) => tempC[row]),
  };
}

/** The readings of [fromMs, toMs]; views, not copies. */
export function readingsWithin(readings: GoodReadings, fromMs: number, toMs: number): GoodReadings {
  const { timeMs } = readings;
  const from = firstNotBefore(timeMs, fromMs);
  const last = firstNotBefore(timeMs, toMs);
  const to = Math.max(from, timeMs[last] === toMs ? last + 1 : last);
  return { ...readings, timeMs: timeMs.subarray(from, to), tempC: readings.tempC.subarray(from, to) };
}
