import type { FanAxis } from './fan-axis.ts';
import type { FanHourCurve } from './fan-hour-curve.ts';
import { LEAST_CHANGE_K, WIDEST_GAP_H } from './front-limits.ts';

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
  return `Good readings are lacking for ${Math.round(widestH)} fan hours in which the front may have passed.`;
}
