import { firstNotBefore } from '../../base/first-not-before.ts';
import { cumulativeFanHours, onAt, stillHoursAt } from '../fan/spans.ts';
import type { GoodReadings } from '../fronts/good-readings.ts';
import { FAN_ON, type FanSpans } from '../types.ts';

/** For so long after a stop, h, the grain still is as the air left it: conduction moves heat by some centimetres. */
const STILL_AS_LEFT_H = 24;

/** A sensor's temperatures over fan hours instead of the clock; both arrays are [moments], fan hours rising. */
export interface PassingCurve {
  cable: string;
  sensor: number;
  heightM: number;
  /** since the fan's log began */
  fanHour: Float64Array;
  tempC: Float64Array;
}

/** What a sensor saw pass: readings with the fan on, and of the day after it stopped; those at one fan hour are averaged. */
export function passingCurve(readings: GoodReadings, spans: FanSpans): PassingCurve {
  const hours = cumulativeFanHours(spans, readings.timeMs);
  const still = stillHoursAt(spans, readings.timeMs);
  const fanHour: number[] = [];
  const tempC: number[] = [];
  let count = 0;
  for (let i = 0; i < hours.length; i++) {
    const counts = onAt(spans, readings.timeMs[i]) === FAN_ON || (still[i] >= 0 && still[i] <= STILL_AS_LEFT_H);
    if (!counts) continue;
    const last = fanHour.length - 1;
    if (last >= 0 && hours[i] - fanHour[last] < 1e-6) {
      count += 1;
      tempC[last] += (readings.tempC[i] - tempC[last]) / count;
      continue;
    }
    fanHour.push(hours[i]);
    tempC.push(readings.tempC[i]);
    count = 1;
  }
  const { cable, sensor, heightM } = readings;
  return { cable, sensor, heightM, fanHour: Float64Array.from(fanHour), tempC: Float64Array.from(tempC) };
}

/** Temperature at a fan hour on the straight line between moments; NaN outside, and where they lie over `gapH` apart. */
export function passingAt(curve: PassingCurve, fanHour: number, gapH: number): number {
  const after = firstNotBefore(curve.fanHour, fanHour);
  if (after >= curve.fanHour.length) return Number.NaN;
  if (curve.fanHour[after] === fanHour) return curve.tempC[after];
  if (after === 0) return Number.NaN;
  const span = curve.fanHour[after] - curve.fanHour[after - 1];
  if (span > gapH) return Number.NaN;
  const part = (fanHour - curve.fanHour[after - 1]) / span;
  return curve.tempC[after - 1] + part * (curve.tempC[after] - curve.tempC[after - 1]);
}
