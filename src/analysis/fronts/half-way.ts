import { AXIS_STEP_H } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { HELD_H } from './front-limits.ts';

/** Part of a front's passage over which readings are averaged to find its middle: against noise and coarse readings. */
const SMOOTH_PART = 0.25;
const LEAST_SMOOTH_H = 2;
/** How far from the crossing of the day's running mean the moment itself may lie, days' windows. */
const NEAR_WINDOWS = 0.75;

/**
 * The fan hour at which a temperature goes through half-way and stays beyond. The running mean over a day says which
 * crossing is the front's; the readings themselves, smoothed only as far as the front is wide, say when.
 *
 * @param halfC     half-way between ahead and behind
 * @param sign      +1 warming, -1 cooling
 * @param steepest  fan hour of the steepest change
 * @param windowH   a day's fan hours
 * @param passageH  duration of the front's passage, fan hours: change over steepest slope
 * @param lengthH   end of the run, fan hours
 * @param searchH   end of where it is looked for
 * @returns         null where it never does
 */
export function halfWay(
  curve: FanHourCurve,
  halfC: number,
  sign: 1 | -1,
  steepest: number,
  windowH: number,
  passageH: number,
  lengthH: number,
  searchH: number,
): number | null {
  const smoothH = Math.min(windowH, Math.max(LEAST_SMOOTH_H, SMOOTH_PART * passageH));
  const beyond = (window: number) => (fanHour: number) => {
    const half = Math.min(window / 2, lengthH - fanHour);
    return sign * (curve.mean(fanHour - half, fanHour + half) - halfC);
  };
  const byDay = crossings(beyond(windowH), 0, searchH);
  if (byDay.length === 0) return null;
  const anchor = byDay.reduce((best, one) => (Math.abs(one - steepest) < Math.abs(best - steepest) ? one : best));
  const near = NEAR_WINDOWS * windowH;
  const fine = crossings(
    beyond(smoothH),
    Math.max(0, anchor - near),
    Math.min(lengthH, anchor + near),
    HELD_H,
    lengthH,
  );
  return fine.length > 0 ? fine[0] : anchor;
}

/**
 * The fan hour of half-way that belongs to one steep change: from it back to where the temperature last stood on the near side,
 * and on to where it goes through. A fall before, past half-way too but back again, is another one.
 *
 * @param halfC, sign, steepest, lengthH, searchH  as above
 * @returns  0 where it stood beyond since the campaign began; null where it never goes through
 */
export function halfWayBeside(
  curve: FanHourCurve,
  halfC: number,
  sign: 1 | -1,
  steepest: number,
  lengthH: number,
  searchH: number,
): number | null {
  const beyond = (fanHour: number) => {
    const half = Math.min(LEAST_SMOOTH_H / 2, lengthH - fanHour);
    return sign * (curve.mean(fanHour - half, fanHour + half) - halfC);
  };
  let x = steepest;
  while (x > 0 && beyond(x) >= 0) x -= AXIS_STEP_H;
  if (x <= 0 && beyond(0) >= 0) return 0;
  return crossings(beyond, Math.max(0, x), searchH)[0] ?? null;
}

/** Where a function goes from below zero to zero or above and stays there for `heldH` (as far as the run goes), rising. */
function crossings(beyond: (x: number) => number, from: number, to: number, heldH = 0, lengthH = to): number[] {
  const found: number[] = [];
  let before = beyond(from);
  const held = (x: number) => {
    for (let ahead = x; ahead <= Math.min(lengthH, x + heldH); ahead += AXIS_STEP_H)
      if (beyond(ahead) < 0) return false;
    return true;
  };
  // Beyond from the first: the front was here already, unless the daily wave of the air before only passes by.
  if (before >= 0 && from === 0 && held(0)) found.push(0);
  for (let x = from + AXIS_STEP_H; x <= to + 1e-9; x += AXIS_STEP_H) {
    const now = beyond(x);
    if (before < 0 && now >= 0 && held(x)) found.push(x - (AXIS_STEP_H * now) / (now - before));
    before = now;
  }
  return found;
}
