import type { FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { ARRIVAL_WITHIN_H, BEHIND_TO_H, LEAST_CHANGE_K } from './front-limits.ts';
import { FINE_H } from './steepest-change.ts';

/** A hole of a sensor's log within which its temperature went through half-way. */
export interface HoleCrossing {
  /** fan hours of the last reading before and the first after */
  hole: readonly [fromH: number, toH: number];
  aheadC: number;
  behindC: number;
}

/** An arrival between readings farther apart than this, fan hours, is not told to within six by the straight line between them. */
export const WIDE_HOLE_H = ARRIVAL_WITHIN_H;

/**
 * The hole of a log in which a front passed for certain: before it the sensor stood on the near side of half-way, when readings
 * came again on the far one, and stayed there.
 *
 * @param sign  +1 warming, -1 cooling
 * @returns     of several the one with the widest change; null where none shows it
 */
export function holeCrossing(curve: FanHourCurve, { searchH }: FanAxis, sign: 1 | -1): HoleCrossing | null {
  const { fanHour } = curve;
  let best: HoleCrossing | null = null;
  for (let i = 1; i < fanHour.length; i++) {
    const [from, to] = [fanHour[i - 1], fanHour[i]];
    if (to <= 0 || from > searchH || to - Math.max(0, from) <= WIDE_HOLE_H) continue;
    const aheadC = curve.at(Math.min(from, 0));
    const behindC = curve.mean(to, Math.max(to, Math.min(to + BEHIND_TO_H, fanHour[fanHour.length - 1])));
    const changeK = sign * (behindC - aheadC);
    const halfC = (aheadC + behindC) / 2;
    const beyond = (tempC: number) => sign * (tempC - halfC) > 0;
    if (changeK < LEAST_CHANGE_K || beyond(curve.mean(from - FINE_H, from)) || !beyond(curve.at(to))) continue;
    if (best === null || changeK > sign * (best.behindC - best.aheadC)) best = { hole: [from, to], aheadC, behindC };
  }
  return best;
}
