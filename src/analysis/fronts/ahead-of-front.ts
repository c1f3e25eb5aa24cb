import { AXIS_STEP_H, type FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { AHEAD_H, DRIFT_K, HOUR_MS } from './front-limits.ts';
import type { GoodReadings } from './good-readings.ts';
import type { SteepestChange } from './steepest-change.ts';

/** The front begins to move a sensor when the running mean changes at this part of the steepest rate. */
const BEGINS_PART = 0.1;

/** Temperature ahead of the front, C. */
export function aheadOf(
  readings: GoodReadings,
  curve: FanHourCurve,
  axis: FanAxis,
  steepest: SteepestChange,
  sign: 1 | -1,
): number {
  const before = meanBefore(readings, axis);
  const moved = beforeItMoves(curve, axis, steepest, sign);
  // An earlier front, or the grain's own heat, moved it the other way first: this front starts from there.
  return Number.isNaN(before) || sign * (before - moved) > DRIFT_K ? moved : before;
}

/**
 * Temperature of a sensor that no front moved as the campaign began, C: of the hours before, else between the readings taken
 * before and after, else its first, which it kept.
 */
export function stoodBefore(readings: GoodReadings, curve: FanHourCurve, axis: FanAxis): number {
  const before = meanBefore(readings, axis);
  return Number.isNaN(before) ? curve.at(0) : before;
}

/** Mean of the readings within AHEAD_H before the campaign, C; NaN where there is none. */
function meanBefore({ timeMs, tempC }: GoodReadings, axis: FanAxis): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < timeMs.length; i++) {
    if (timeMs[i] < axis.startMs - AHEAD_H * HOUR_MS || timeMs[i] > axis.startMs) continue;
    sum += tempC[i];
    count += 1;
  }
  return count > 0 ? sum / count : Number.NaN;
}

/** Mean over the hours before the front begins to move the sensor, C. */
export function beforeItMoves(curve: FanHourCurve, axis: FanAxis, steepest: SteepestChange, sign: 1 | -1): number {
  const { windowH } = steepest;
  let fanHour = steepest.fanHour;
  const rate = (x: number) =>
    (sign * (curve.mean(x, x + windowH / 2) - curve.mean(x - windowH / 2, x))) / (windowH / 2);
  while (fanHour > 0 && rate(fanHour) > BEGINS_PART * steepest.slope) fanHour -= AXIS_STEP_H;
  // The definition's 12 hours, or a day's fan hours where the fan ran for less.
  const from = Math.max(fanHour - Math.min(windowH, AHEAD_H), curve.fanHour[0]);
  return fanHour <= from ? curve.at(Math.min(fanHour, axis.lengthH)) : curve.mean(from, fanHour);
}
