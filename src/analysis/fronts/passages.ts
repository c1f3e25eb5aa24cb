import { AXIS_STEP_H, type FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { BEHIND_FROM_H, DAY_H } from './front-limits.ts';
import { FINE_H, type SteepestChange, slopeAt } from './steepest-change.ts';

/** A moment at which a front may have passed a sensor. */
export interface Passage {
  fanHours: number;
  aheadC: number;
  behindC: number;
  /** how much the sensor's own readings speak for it: definitionVote, HOURS_VOTE and DAY_VOTE at most, together */
  weight: number;
  /** fan hours of the readings around it, where these lie too far apart to tell it */
  hole?: readonly [number, number];
}

/** At most, for the passage that belongs to the steepest change as the definition's single sensor would tell it. */
const DEFINITION_VOTE = 0.5;
/** For the slope over a few hours and over a day, against the sensor's steepest: the definition names no scale. */
export const HOURS_VOTE = 1;
export const DAY_VOTE = 0.5;

/** A front that takes this many days' fan hours to pass a sensor begins to be one for the running mean over a day. */
const WIDE_DAYS = 1.5;

/**
 * That steepest change is found in the running mean over a day, which is free of the daily wave. Where the fan rests
 * through half of the day or more, only one side of that wave comes in (through a quarter, most of both), and the mean
 * weighs night against night: it is blind to a front that passes within one night, of which the readings themselves tell
 * the hour.
 *
 * @param windowH   a day's fan hours
 * @param passageH  fan hours that the front takes to pass the sensor: change over steepest slope
 */
export function definitionVote(windowH: number, passageH: number): number {
  const part = Math.max((4 * windowH) / DAY_H - 2, passageH / windowH - WIDE_DAYS);
  return DEFINITION_VOTE * Math.min(1, Math.max(0, part));
}

/** A change with less than this part of the steepest slope is no candidate. */
const LEAST_PART = 0.35;
/** The steepest so many changes of each scale are looked at. */
const MOST_PEAKS = 5;
/** Crossings this near to each other are one passage, fan hours. */
const SAME_PASSAGE_H = 3;

/** A place where the temperature changes steepest of its surroundings, and how steep against the campaign's steepest. */
export interface Peak extends SteepestChange {
  part: number;
}

/** Peaks of the slope in the campaign's direction, over FINE_H or over a day's fan hours, steepest first. */
export function slopePeaks(curve: FanHourCurve, axis: FanAxis, sign: 1 | -1, over: 'hours' | 'day'): Peak[] {
  const lastStep = Math.floor(Math.min(axis.searchH, axis.lengthH - BEHIND_FROM_H) / AXIS_STEP_H);
  const windowOf = (step: number) => (over === 'day' ? axis.windowH[step] : FINE_H);
  const slopes = new Float64Array(Math.max(0, lastStep + 1));
  for (let step = 0; step <= lastStep; step++) {
    const windowH = windowOf(step);
    const fanHour = step * AXIS_STEP_H;
    // Near the end of the run a day's window holds part of a day only: such slopes count less.
    const trust = Math.min(1, (axis.lengthH - fanHour) / windowH) ** 2;
    slopes[step] = sign * slopeAt(curve, fanHour, windowH, axis.lengthH) * trust;
  }
  const most = slopes.reduce((top, one) => Math.max(top, one), 0);
  const peaks: Peak[] = [];
  for (let step = 0; step <= lastStep; step++) {
    const slope = slopes[step];
    if (!(slope >= LEAST_PART * most && slope > 0)) continue;
    if (slope < (slopes[step - 1] ?? 0) || slope <= (slopes[step + 1] ?? 0)) continue;
    peaks.push({ fanHour: step * AXIS_STEP_H, slope, windowH: axis.windowH[step], part: slope / most });
  }
  return peaks.sort((a, b) => b.slope - a.slope).slice(0, MOST_PEAKS);
}

/** A passage with what spoke for it. */
export interface TimedVote extends Passage {
  kind: 'definition' | 'hours' | 'day';
}

/** Passages told several times become one: the best supported moment, the votes of each kind counted once. */
export function mergedPassages(told: readonly TimedVote[]): Passage[] {
  const left = [...told].sort((a, b) => b.weight - a.weight);
  const out: Passage[] = [];
  while (left.length > 0) {
    const [first] = left;
    const same = left.filter((one) => Math.abs(one.fanHours - first.fanHours) <= SAME_PASSAGE_H);
    const kinds = [...new Set(same.map((one) => one.kind))];
    const most = (kind: TimedVote['kind']) =>
      Math.max(...same.filter((one) => one.kind === kind).map((one) => one.weight));
    const { fanHours, aheadC, behindC, hole } = same.find((one) => one.kind === 'definition') ?? first;
    out.push({ fanHours, aheadC, behindC, hole, weight: kinds.reduce((sum, kind) => sum + most(kind), 0) });
    for (const one of same) left.splice(left.indexOf(one), 1);
  }
  return out.sort((a, b) => b.weight - a.weight);
}
