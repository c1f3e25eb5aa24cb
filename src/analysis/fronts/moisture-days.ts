import { median } from '../../base/stats/quantile.ts';
import { AIR_STILL, type SensorReadings } from '../moisture/sensor-readings.ts';
import { DAY_H, HOUR_MS } from './front-limits.ts';

/** A sensor's moisture by days of the clock, on the axis of fan hours; every array is [days with readings]. */
export interface MoistureDays {
  timeMs: number[];
  fanHours: number[];
  /** wet basis, fraction, the middle of three days */
  moistureWb: number[];
  /** 1 where the fan's stops let the air come to rest, so that still-air readings carry the day */
  still: number[];
}

/** So many still-air readings carry a day: one alone may be a stray. */
const LEAST_STILL = 2;

/**
 * @param hoursAt  fan hours since the campaign began, at rising times
 */
export function moistureDays(
  readings: SensorReadings,
  startMs: number,
  hoursAt: (timesMs: Float64Array) => Float64Array,
): MoistureDays {
  const days = new Map<number, number[]>();
  readings.timeMs.forEach((ms, i) => {
    const day = Math.floor((ms - startMs) / (DAY_H * HOUR_MS));
    const rows = days.get(day);
    if (rows === undefined) days.set(day, [i]);
    else rows.push(i);
  });
  const timeMs: number[] = [];
  const raw: number[] = [];
  const still: number[] = [];
  for (const rows of days.values()) {
    const quiet = rows.filter((i) => readings.air[i] === AIR_STILL);
    const used = quiet.length >= LEAST_STILL ? quiet : rows;
    const mean = (of: (i: number) => number) => used.reduce((sum, i) => sum + of(i), 0) / used.length;
    timeMs.push(mean((i) => readings.timeMs[i]));
    raw.push(mean((i) => readings.value[i]));
    still.push(used === quiet ? 1 : 0);
  }
  return {
    timeMs,
    fanHours: Array.from(hoursAt(Float64Array.from(timeMs))),
    moistureWb: raw.map((_, i) => median(raw.slice(Math.max(0, i - 1), i + 2))),
    still,
  };
}
