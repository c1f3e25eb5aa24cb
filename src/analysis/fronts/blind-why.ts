import type { FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { BEHIND_FROM_H, BEHIND_TO_H, LEAST_CHANGE_K, WIDEST_GAP_H } from './front-limits.ts';
import { FINE_H } from './steepest-change.ts';

/** How a reason begins that a hole of the log is to blame for. */
export const LACKING = 'Good readings are lacking for';

/**
 * Why a sensor that shows no front may have been passed by one all the same: without a good reading for more than
 * WIDEST_GAP_H fan hours, and the temperature stood a front's change farther on when readings came again, or none came.
 *
 * @param curve  of the sensor's good readings
 * @param axis   as far as the front is looked for, whether the sensor has readings there or not
 * @param sign   +1 warming, -1 cooling
 * @returns      null where its readings show that none passed
 */
export function blindWhy({ fanHour, tempC }: FanHourCurve, { searchH }: FanAxis, sign: 1 | -1): string | null {
  let widestH = searchH - Math.max(0, fanHour[fanHour.length - 1]);
  for (let i = 1; i < fanHour.length; i++) {
    if (sign * (tempC[i] - tempC[i - 1]) < LEAST_CHANGE_K) continue;
    widestH = Math.max(widestH, Math.min(fanHour[i], searchH) - Math.max(fanHour[i - 1], 0));
  }
  if (widestH <= WIDEST_GAP_H) return null;
  return `${LACKING} ${Math.round(widestH)} fan hours in which the front may have passed.`;
}

/** Noise and steps of the readings let a change as steep as another look this much of it, over a few hours. */
const AS_STEEP = 0.75;
/** Less than this part of the hours behind a front read tells no mean of them. */
const LEAST_READ = 0.5;

/**
 * Why a steep change's "behind" is not known: most of the hours that it is the mean of were not read, though the fan ran.
 *
 * @param fanHour  of the steep change
 * @returns        null where enough of them was read
 */
export function behindUnreadWhy(curve: FanHourCurve, { lengthH }: FanAxis, fanHour: number): string | null {
  const [fromH, toH] = [fanHour + BEHIND_FROM_H, Math.min(lengthH, fanHour + BEHIND_TO_H)];
  const unreadH = gapsOf(curve, lengthH).reduce(
    (sum, [from, to]) => sum + Math.max(0, Math.min(to, toH) - Math.max(from, fromH)),
    0,
  );
  if (unreadH <= (1 - LEAST_READ) * (toH - fromH)) return null;
  return `${LACKING} ${Math.round(unreadH)} of the fan hours that show what lies behind the front.`;
}

/**
 * Why the steepest change of a sensor is not known: its readings break off amid one as steep as any that was read.
 *
 * @param slope  of the steepest change read, K per fan hour, positive in the campaign's direction
 * @returns      null where they do not
 */
export function brokenOffWhy(curve: FanHourCurve, { lengthH, searchH }: FanAxis, sign: 1 | -1, slope: number) {
  for (const [from, to] of gapsOf(curve, lengthH)) {
    const [before, last] = [curve.mean(from - 2 * FINE_H, from - FINE_H), curve.mean(from - FINE_H, from)];
    if (from <= 0 || from > searchH || (sign * (last - before)) / FINE_H < AS_STEEP * slope) continue;
    return `${LACKING} ${Math.round(to - from)} fan hours from amid the front on.`;
  }
  return null;
}

/** Fan hours without a reading for more than WIDEST_GAP_H, up to the end of what is looked at. */
function gapsOf({ fanHour }: FanHourCurve, lengthH: number): [from: number, to: number][] {
  const ends = [...fanHour.filter((hour) => hour < lengthH), lengthH];
  return ends.flatMap((to, i) => (i > 0 && to - ends[i - 1] > WIDEST_GAP_H ? [[ends[i - 1], to]] : []));
}
