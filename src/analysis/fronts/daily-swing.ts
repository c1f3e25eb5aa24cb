import { DAY_H, HOUR_MS } from './front-limits.ts';
import type { GoodReadings } from './good-readings.ts';

/**
 * How far the grain itself swings with the day's air: half of the range of a sensor's readings in the day before
 * less its trend over that day, mean over the sensors.
 *
 * @param atMs  [times], rising
 * @returns     [times], K; 0 where no sensor has a day's readings
 */
export function dailySwing(readings: readonly GoodReadings[], atMs: Float64Array): Float64Array {
  const sum = new Float64Array(atMs.length);
  const count = new Float64Array(atMs.length);
  for (const { timeMs, tempC } of readings) {
    let from = 0;
    let to = 0;
    for (let i = 0; i < atMs.length; i++) {
      while (to < timeMs.length && timeMs[to] <= atMs[i]) to += 1;
      while (from < to && timeMs[from] < atMs[i] - DAY_H * HOUR_MS) from += 1;
      if (to - from < 4) continue;
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let k = from; k < to; k++) {
        low = Math.min(low, tempC[k]);
        high = Math.max(high, tempC[k]);
      }
      const trendK = Math.abs(tempC[to - 1] - tempC[from]);
      sum[i] += Math.max(0, high - low - trendK) / 2;
      count[i] += 1;
    }
  }
  return sum.map((total, i) => (count[i] > 0 ? total / count[i] : 0));
}
