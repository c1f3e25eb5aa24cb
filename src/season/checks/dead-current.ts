import { HOUR_MS } from './track.ts';

/** A fan at work takes at least this share of its nameplate by the meter, or the plenum's static pressure shows it. */
export const WORKING_SHARE = 0.25;
/** A current below this share of the usual running current is none. */
export const NO_CURRENT_SHARE = 0.1;
/** Less than this is a start or a stop between two readings. */
export const DEAD_CURRENT_MS = 12 * HOUR_MS;
/** Share of the working readings in between that must show no current. */
const DEAD_SHARE = 0.9;
/** A pressure from here up is a fan at work (0.2 inch of water); chimney draught in a bin stays far below. */
export const WORKING_PRESSURE_PA = 50;

/** A stretch in which the current sensor reads nothing although the fan worked; positions, both inclusive. */
export interface DeadCurrent {
  first: number;
  last: number;
  hours: number;
}

/**
 * @param timeMs    [readings], rising
 * @param currentA  [readings]
 * @param working   [readings], 1 where something else shows that the fan worked
 * @param usualA    usual running current, A
 */
export function deadCurrent(
  timeMs: ArrayLike<number>,
  currentA: ArrayLike<number>,
  working: ArrayLike<number>,
  usualA: number,
): DeadCurrent[] {
  const out: DeadCurrent[] = [];
  let first = -1;
  let last = -1;
  let hours = 0;
  let dead = 0;
  let alive = 0;
  const close = () => {
    if (first >= 0 && hours * HOUR_MS >= DEAD_CURRENT_MS && dead >= DEAD_SHARE * (dead + alive)) {
      out.push({ first, last, hours });
    }
    first = -1;
    hours = 0;
    dead = 0;
    alive = 0;
  };
  for (let i = 0; i < timeMs.length; i++) {
    if (!working[i] || !Number.isFinite(currentA[i])) continue;
    if (currentA[i] < NO_CURRENT_SHARE * usualA) {
      if (first < 0) first = i;
      last = i;
      dead += 1;
      if (i + 1 < timeMs.length) hours += Math.min(6, (timeMs[i + 1] - timeMs[i]) / HOUR_MS);
    } else if (first >= 0) {
      alive += 1;
      if (alive > 3) close();
    }
  }
  close();
  return out;
}
