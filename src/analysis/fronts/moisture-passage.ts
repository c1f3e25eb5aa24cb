import { Z90 } from '../../base/estimate.ts';
import type { MoistureDays } from './moisture-days.ts';

/** Level of a day's mean against what grain there holds, sd as a fraction: with the fan on (as for a start in moving air) and in still air. */
const MOVING_SD = 0.004;
const STILL_SD = 0.002;
/** The front has passed half-way when the moisture stays on the far side for this many days. */
const HELD_DAYS = 3;

export interface MoisturePassage {
  fanHours: number;
  interval: [number, number];
}

/**
 * Where a sensor's moisture goes through half-way and stays beyond.
 *
 * @param halfWb  half-way between ahead and behind, fraction
 * @param sign    -1 drying, +1 wetting
 * @param endH    fan hours that the campaign lasted
 * @returns       null where it never does
 */
export function moisturePassage(
  days: MoistureDays,
  halfWb: number,
  sign: 1 | -1,
  endH: number,
): MoisturePassage | null {
  const moved = days.still.some((one) => one === 0);
  const reach = Z90 * (moved ? MOVING_SD : STILL_SD);
  const at = crossing(days, halfWb, sign);
  if (at === null) return null;
  const low = crossing(days, halfWb - sign * reach, sign) ?? 0;
  const high = crossing(days, halfWb + sign * reach, sign) ?? endH;
  return { fanHours: at, interval: [Math.min(low, at), Math.max(high, at)] };
}

function crossing({ fanHours, moistureWb }: MoistureDays, levelWb: number, sign: 1 | -1): number | null {
  const beyond = (i: number) => sign * (moistureWb[i] - levelWb);
  for (let i = 0; i < moistureWb.length; i++) {
    if (beyond(i) < 0) continue;
    const last = Math.min(moistureWb.length, i + HELD_DAYS);
    // One day alone at the end of the log may be a stray.
    if (last - i < 2) return null;
    let held = true;
    for (let k = i; k < last; k++) held &&= beyond(k) >= 0;
    if (!held) continue;
    if (i === 0) return fanHours[0];
    const part = beyond(i - 1) / (beyond(i - 1) - beyond(i));
    return fanHours[i - 1] + part * (fanHours[i] - fanHours[i - 1]);
  }
  return null;
}
