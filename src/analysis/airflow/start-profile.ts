import { firstNotBefore } from '../../base/first-not-before.ts';
import type { PassingCurve } from './passing-curve.ts';

/** The way between two sensors is cut into so many steps. */
export const PROFILE_STEPS = 32;

/** A sensor on the way: its place from 0 at the first to 1 at the second. */
export interface OnTheWay {
  part: number;
  curve: PassingCurve;
}

/**
 * Temperatures of the grain between two sensors as a run begins: straight lines between all sensors on the way. They are
 * what arrives first at the second.
 *
 * @param gapH  a sensor counts with its first reading within so many fan hours
 * @returns     [PROFILE_STEPS + 1], from the first sensor on; null where one of its ends is not known
 */
export function startProfile(
  first: PassingCurve,
  second: PassingCurve,
  between: readonly OnTheWay[],
  runFromH: number,
  gapH: number,
): Float64Array | null {
  const points = [{ part: 0, curve: first }, ...between, { part: 1, curve: second }]
    .map(({ part, curve }) => ({ part, tempC: firstAfter(curve, runFromH, gapH) }))
    .filter((one) => !Number.isNaN(one.tempC));
  if (points.length < 2 || points[0].part !== 0 || points[points.length - 1].part !== 1) return null;
  let i = 0;
  return Float64Array.from({ length: PROFILE_STEPS + 1 }, (_, k) => {
    const at = k / PROFILE_STEPS;
    while (i + 2 < points.length && points[i + 1].part < at) i++;
    const [low, high] = [points[i], points[i + 1]];
    return low.tempC + ((at - low.part) / (high.part - low.part)) * (high.tempC - low.tempC);
  });
}

function firstAfter({ fanHour, tempC }: PassingCurve, fromH: number, gapH: number): number {
  const i = firstNotBefore(fanHour, fromH);
  return i < fanHour.length && fanHour[i] - fromH <= gapH ? tempC[i] : Number.NaN;
}
