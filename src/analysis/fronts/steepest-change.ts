import { AXIS_STEP_H, type FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { BEHIND_FROM_H } from './front-limits.ts';

/** A wide front is looked at through a window of this part of its passage, so that noise does not pull the steepest place about. */
const WIDE_PART = 0.5;
const WIDEST_WINDOW_H = 72;

/** Steps of the axis from one place to the next where means over hours are compared. */
const COARSE_STEPS = 2;
/** Places whose day's window shows at least this part of the steepest slope are looked at for the sharpest. */
const ALIKE_PART = 0.85;

/** Where a sensor's temperature changes steepest in a campaign. */
export interface SteepestChange {
  fanHour: number;
  /** K per fan hour, positive in the campaign's direction */
  slope: number;
  /** running-mean window there, fan hours */
  windowH: number;
}

/**
 * Rate of change around a fan hour, free of the daily wave: mean of a day's fan hours after less that of a day's before.
 * Before the campaign the temperature counts as it stood; towards the end of the run both windows shrink alike.
 */
export function slopeAt(curve: FanHourCurve, fanHour: number, windowH: number, lengthH: number): number {
  const half = Math.min(windowH, lengthH - fanHour);
  return (curve.mean(fanHour, fanHour + half) - curve.mean(fanHour - half, fanHour)) / half;
}

/**
 * The steepest change in the campaign's direction that leaves BEHIND_FROM_H of the run to see what comes behind it.
 *
 * @param sign  +1 warming, -1 cooling
 * @returns     null where the run is too short, or nothing moved that way
 */
export function steepestChange(curve: FanHourCurve, axis: FanAxis, sign: 1 | -1): SteepestChange | null {
  const lastStep = Math.floor(Math.min(axis.searchH, axis.lengthH - BEHIND_FROM_H) / AXIS_STEP_H);
  const best: SteepestChange = { fanHour: 0, slope: 0, windowH: 0 };
  const look = (
    fromStep: number,
    toStep: number,
    windowAt: (step: number) => number,
    trust: (part: number) => number,
  ) => {
    let most = 0;
    for (let step = Math.max(0, fromStep); step <= Math.min(lastStep, toStep); step += COARSE_STEPS) {
      const fanHour = step * AXIS_STEP_H;
      const windowH = windowAt(step);
      const slope = sign * slopeAt(curve, fanHour, windowH, axis.lengthH);
      const weighed = slope * trust(Math.min(1, (axis.lengthH - fanHour) / windowH));
      if (!(weighed > most)) continue;
      most = weighed;
      Object.assign(best, { fanHour, slope, windowH });
    }
  };
  // Near the end of the run the windows hold only part of a day and the daily wave comes through: such slopes count less.
  look(
    0,
    lastStep,
    (step) => axis.windowH[step],
    (part) => part * part,
  );
  if (!(best.slope > 0)) return null;
  const shrunkFrom = axis.lengthH - best.windowH;
  if (best.fanHour > shrunkFrom) {
    // Seen only in shrunken windows: that weight is blind to where between here and the end a sharp front lies, a lesser one sees it.
    look(
      Math.floor(best.fanHour / AXIS_STEP_H),
      lastStep,
      (step) => axis.windowH[step],
      (part) => part,
    );
  }

  const { fanHour, windowH: dayH } = best;
  const aheadC = curve.at(Math.max(0, fanHour - 3 * dayH));
  const behindTo = Math.max(fanHour + dayH, Math.min(fanHour + 2 * dayH, axis.lengthH));
  const changeK = sign * (curve.mean(Math.min(fanHour + dayH, axis.lengthH - 1), behindTo) - aheadC);
  // A day's window shows a sharp front only to within hours, and air that goes on getting colder flattens its top.
  const level = ALIKE_PART * best.slope;
  const alike = (at: number) => sign * slopeAt(curve, at, Math.min(dayH, axis.lengthH - at), axis.lengthH) >= level;
  const sharp = fineSteepest(curve, axis, sign, fanHour - dayH, fanHour + dayH, alike);
  if (sharp.slope * dayH > changeK && sharp.fanHour <= lastStep * AXIS_STEP_H) {
    best.fanHour = sharp.fanHour;
    return best;
  }
  const wideH = Math.min(WIDEST_WINDOW_H, WIDE_PART * (changeK / best.slope));
  if (wideH > dayH) {
    const step = fanHour / AXIS_STEP_H;
    const reach = wideH / AXIS_STEP_H;
    look(
      Math.ceil(step - reach),
      Math.floor(step + reach),
      () => wideH,
      (part) => part * part,
    );
    best.windowH = dayH;
  }
  return best;
}

/** Half-width of the window that shows a front's own steepness where it is sharp, fan hours: a few readings. */
export const FINE_H = 3;

/**
 * Ahead of a front the sensor stands still; the daily wave rides behind it, and may be as steep. So the first place with
 * at least this part of the steepest rate is the front's.
 */
const FIRST_PART = 0.75;

/**
 * Steepest rate in the campaign's direction at the scale of a few readings within [from, to], and where.
 *
 * @returns  slope in K per fan hour, positive in the campaign's direction
 */
export function fineSteepest(
  curve: FanHourCurve,
  axis: FanAxis,
  sign: 1 | -1,
  from: number,
  to: number,
  allowed: (fanHour: number) => boolean = () => true,
): { fanHour: number; slope: number } {
  const peaks: { fanHour: number; slope: number }[] = [];
  let rising = false;
  let before = { fanHour: from, slope: Number.NEGATIVE_INFINITY };
  for (let fanHour = Math.max(0, from); fanHour <= Math.min(to, axis.lengthH - FINE_H); fanHour += AXIS_STEP_H) {
    const now = { fanHour, slope: allowed(fanHour) ? sign * slopeAt(curve, fanHour, FINE_H, axis.lengthH) : 0 };
    if (rising && now.slope < before.slope) peaks.push(before);
    rising = now.slope > before.slope;
    before = now;
  }
  if (rising) peaks.push(before);
  const most = peaks.reduce((top, one) => Math.max(top, one.slope), 0);
  return peaks.find(({ slope }) => slope >= FIRST_PART * most) ?? { fanHour: from, slope: 0 };
}
