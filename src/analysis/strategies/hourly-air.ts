import { relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import { firstNotBefore } from '../../base/first-not-before.ts';
import type { OutdoorAir } from './outdoor-air.ts';

const HOUR_MS = 3_600_000;
/** Readings so far apart are an archive's usual pace (synoptic reports come each 3 hours, WMO-No. 306). */
export const USUAL_H = 3;
/** Longer gaps than this are not bridged by a straight line: a front may pass within. Our choice. */
export const BRIDGED_H = 6;

/** A stretch of hours. Arrays are [hours]. */
export interface HourlyAir {
  tempC: Float64Array;
  rh: Float64Array;
  humidityRatio: Float64Array;
  /** hours that lie in a gap of more than `USUAL_H` and no more than `BRIDGED_H` hours */
  bridged: number;
  /** hours that nothing tells: NaN in the arrays */
  lacking: number;
  /** longest time without a reading, and when it begins; at the ends of the data counted from the stretch's end */
  longestGapH: number;
  longestGapFromMs: number;
}

/**
 * Means of whole hours. An hour's mean in the archive stands as it is; observations are joined by straight lines, temperature
 * and humidity ratio alike, and averaged over the hour. The relative humidity is that of the two means, at most 1.
 *
 * @param startMs     start of the first hour, ms UTC
 * @param pressurePa  of the site
 */
export function hourlyAir(air: OutdoorAir, startMs: number, hours: number, pressurePa: number): HourlyAir {
  const { timeMs, hourMean } = air;
  const tempC = new Float64Array(hours).fill(Number.NaN);
  const humidityRatio = new Float64Array(hours).fill(Number.NaN);
  const rh = new Float64Array(hours).fill(Number.NaN);
  const count = timeMs.length;
  let bridged = 0;
  let lacking = 0;
  let next = firstNotBefore(timeMs, startMs);
  for (let hour = 0; hour < hours; hour++) {
    const from = startMs + hour * HOUR_MS;
    while (next < count && timeMs[next] < from) next += 1;
    const middle = next < count && hourMean[next] === 1 && timeMs[next] === from + HOUR_MS / 2;
    if (middle) {
      tempC[hour] = air.tempC[next];
      humidityRatio[hour] = air.humidityRatio[next];
    } else {
      const apartH = widestH(timeMs, next, from);
      if (!(apartH <= BRIDGED_H)) {
        lacking += 1;
        continue;
      }
      if (apartH > USUAL_H) bridged += 1;
      tempC[hour] = meanOf(timeMs, air.tempC, next, from);
      humidityRatio[hour] = meanOf(timeMs, air.humidityRatio, next, from);
    }
    rh[hour] = Math.min(1, relativeHumidityOfRatio(tempC[hour], humidityRatio[hour], pressurePa));
  }
  return { tempC, rh, humidityRatio, bridged, lacking, ...longestGap(timeMs, startMs, startMs + hours * HOUR_MS) };
}

/** Widest step between the readings that the hour from `from` on rests on; infinite where one side has none within an hour. */
function widestH(timeMs: Float64Array, next: number, from: number): number {
  const to = from + HOUR_MS;
  const count = timeMs.length;
  let widest = 0;
  let at = next > 0 ? timeMs[next - 1] : from - HOUR_MS;
  for (let i = next; ; i++) {
    const then = i < count ? timeMs[i] : Number.POSITIVE_INFINITY;
    // Before the first and after the last reading an hour is held at it.
    if (next === 0 && i === 0) {
      if (then - from > HOUR_MS) return Number.POSITIVE_INFINITY;
    } else if (i === count) {
      return to - at > HOUR_MS ? Number.POSITIVE_INFINITY : widest;
    } else if (then > from) widest = Math.max(widest, (then - at) / HOUR_MS);
    if (then >= to) return widest;
    at = then;
  }
}

/** Mean over the hour of the straight lines through readings, held at the first and last. */
function meanOf(timeMs: Float64Array, values: Float64Array, next: number, from: number): number {
  const to = from + HOUR_MS;
  const last = timeMs.length - 1;
  let sum = 0;
  let at = from;
  let value = valueAt(timeMs, values, next, from);
  for (let i = next; at < to; i++) {
    const end = i <= last ? Math.min(to, timeMs[i]) : to;
    const then = valueAt(timeMs, values, i, end);
    sum += ((value + then) / 2) * (end - at);
    at = end;
    value = then;
  }
  return sum / HOUR_MS;
}

/** On the line that ends in reading `i`. */
function valueAt(timeMs: Float64Array, values: Float64Array, i: number, ms: number): number {
  if (i <= 0) return values[0];
  if (i >= timeMs.length) return values[timeMs.length - 1];
  return values[i - 1] + ((values[i] - values[i - 1]) * (ms - timeMs[i - 1])) / (timeMs[i] - timeMs[i - 1]);
}

function longestGap(timeMs: Float64Array, fromMs: number, toMs: number) {
  let longest = 0;
  let longestFrom = fromMs;
  let at = fromMs;
  const first = firstNotBefore(timeMs, fromMs);
  if (first > 0) at = Math.max(timeMs[first - 1], fromMs - BRIDGED_H * HOUR_MS);
  for (let i = first; at < toMs; i++) {
    const then = i < timeMs.length ? Math.min(timeMs[i], toMs + BRIDGED_H * HOUR_MS) : toMs;
    if (then - at > longest) {
      longest = then - at;
      longestFrom = at;
    }
    at = Math.max(at, then);
  }
  return { longestGapH: longest / HOUR_MS, longestGapFromMs: longestFrom };
}
