import type { FanAxis } from './fan-axis.ts';
import { AXIS_STEP_H } from './fan-axis.ts';
import { type FanHourCurve, fanHourCurve } from './fan-hour-curve.ts';
import { AHEAD_H, BEHIND_FROM_H, BEHIND_TO_H, DRIFT_K, HOUR_MS, LEAST_CHANGE_K, WIDEST_GAP_H } from './front-limits.ts';
import type { GoodReadings } from './good-readings.ts';
import { halfWay } from './half-way.ts';
import { TOO_SMALL } from './stalled.ts';
import { fineSteepest, type SteepestChange, steepestChange } from './steepest-change.ts';

/** A sensor's part in a campaign; `why` is null exactly when the front arrived. */
export interface SensorArrival {
  fanHours: number | null;
  aheadC: number | null;
  behindC: number | null;
  why: string | null;
}

/** The front begins to move a sensor when the running mean changes at this part of the steepest rate. */
const BEGINS_PART = 0.1;

const none = (why: string, aheadC: number | null = null, behindC: number | null = null): SensorArrival => ({
  fanHours: null,
  aheadC,
  behindC,
  why,
});

/**
 * When the front reached a sensor: half of the way from ahead (mean of the AHEAD_H before the campaign, or before the
 * front begins to move it) to behind (mean from BEHIND_FROM_H to BEHIND_TO_H fan hours after its steepest change, as far
 * as the run goes).
 *
 * @param readings  from before the campaign to after what the axis spans
 * @param sign      +1 warming, -1 cooling
 * @source  definition of `front arrival` in the kit's season format
 */
export function sensorArrival(readings: GoodReadings, axis: FanAxis, sign: 1 | -1): SensorArrival {
  const { timeMs, tempC } = readings;
  const fanHours = axis.hoursAt(timeMs);
  if (!fanHours.some((hours, i) => timeMs[i] >= axis.startMs && hours <= axis.searchH)) {
    return none('The sensor has no good readings in this campaign.');
  }
  const curve = fanHourCurve(fanHours, timeMs, tempC);
  const lastH = Math.min(axis.lengthH, curve.fanHour[curve.fanHour.length - 1]);
  const seen: FanAxis = { ...axis, lengthH: lastH, searchH: Math.min(axis.searchH, lastH) };
  const steepest = steepestChange(curve, seen, sign);
  if (steepest === null) {
    return none(
      lastH < BEHIND_FROM_H
        ? 'The sensor has good readings of too few fan hours of this campaign.'
        : 'The front did not get there: the temperature did not move that way.',
    );
  }
  const aheadC = aheadOf(readings, curve, seen, steepest, sign);
  const behindOf = (fanHour: number) =>
    curve.mean(fanHour + BEHIND_FROM_H, Math.min(fanHour + BEHIND_TO_H, Math.max(lastH, fanHour + BEHIND_FROM_H)));
  const behindC = behindOf(steepest.fanHour);
  const changeK = sign * (behindC - aheadC);
  if (changeK < LEAST_CHANGE_K) {
    return none(TOO_SMALL, aheadC, behindC);
  }
  if (stillPassing(steepest, lastH)) {
    return none('The fan stopped, or the front was followed no farther, while it was passing this sensor.', aheadC);
  }
  const at = crossing(curve, seen, sign, steepest, aheadC, behindC);
  if (at === null) {
    return none('The front was not half-way through this sensor before it was followed no farther.', aheadC, behindC);
  }
  if (gapAround(curve, at) > WIDEST_GAP_H) {
    return none(
      `Good readings are lacking for ${Math.round(gapAround(curve, at))} fan hours around the arrival.`,
      aheadC,
      behindC,
    );
  }
  return { fanHours: at, aheadC, behindC, why: null };
}

/** The fan hour of half-way near a steepest change; null where the temperature never goes through it. */
function crossing(
  curve: FanHourCurve,
  axis: FanAxis,
  sign: 1 | -1,
  { fanHour, windowH }: SteepestChange,
  aheadC: number,
  behindC: number,
): number | null {
  const fine = fineSteepest(curve, axis, sign, fanHour - windowH, fanHour + windowH);
  const passageH = (sign * (behindC - aheadC)) / Math.max(fine.slope, 1e-6);
  const halfC = (aheadC + behindC) / 2;
  return halfWay(curve, halfC, sign, fanHour, windowH, passageH, axis.lengthH, axis.searchH);
}

/** The steepest change in sight lies at its very end: it may yet have become steeper. */
function stillPassing(steepest: SteepestChange, lastH: number): boolean {
  return steepest.fanHour + BEHIND_FROM_H >= lastH - AXIS_STEP_H;
}

/** Temperature ahead of the front, C. */
function aheadOf(
  { timeMs, tempC }: GoodReadings,
  curve: FanHourCurve,
  axis: FanAxis,
  steepest: SteepestChange,
  sign: 1 | -1,
): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < timeMs.length; i++) {
    if (timeMs[i] < axis.startMs - AHEAD_H * HOUR_MS || timeMs[i] > axis.startMs) continue;
    sum += tempC[i];
    count += 1;
  }
  const before = count > 0 ? sum / count : Number.NaN;
  const moved = beforeItMoves(curve, axis, steepest, sign);
  // An earlier front, or the grain's own heat, moved it the other way first: this front starts from there.
  return Number.isNaN(before) || sign * (before - moved) > DRIFT_K ? moved : before;
}

/** Mean over a day's fan hours before the front begins to move the sensor, C. */
function beforeItMoves(curve: FanHourCurve, axis: FanAxis, steepest: SteepestChange, sign: 1 | -1): number {
  const { windowH } = steepest;
  let fanHour = steepest.fanHour;
  const rate = (x: number) =>
    (sign * (curve.mean(x, x + windowH / 2) - curve.mean(x - windowH / 2, x))) / (windowH / 2);
  while (fanHour > 0 && rate(fanHour) > BEGINS_PART * steepest.slope) fanHour -= AXIS_STEP_H;
  const from = Math.max(fanHour - windowH, curve.fanHour[0]);
  return fanHour <= from ? curve.at(Math.min(fanHour, axis.lengthH)) : curve.mean(from, fanHour);
}

/** Fan hours between the readings to both sides of a fan hour. */
function gapAround(curve: FanHourCurve, fanHour: number): number {
  const after = curve.fanHour.findIndex((x) => x >= fanHour);
  if (after <= 0) return after === 0 ? 0 : Number.POSITIVE_INFINITY;
  return curve.fanHour[after] - curve.fanHour[after - 1];
}
