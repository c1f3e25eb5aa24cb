import { median } from '../../base/stats/quantile.ts';
import { quantileOf } from './interval.ts';
import { DAY_MS, type Track } from './track.ts';
import type { UnitMistake } from './unit-stretch.ts';

/** Days that two records must share before levels are compared. */
const LEVEL_DAYS = 10;
/** Share of those days that must speak the same way. */
const LEVEL_SHARE = 0.85;
/** Cables of one bin are that far apart by what the file says, and that close by the other scale. */
export const LEVEL_APART_K = 8;
export const LEVEL_JOIN_K = 5;
/** Against the month's mean outdoor air: a whole bin so much colder than it, or so hot (half its days above 30 C, or a tenth above 40 C). */
const LEVEL_COLDER_K = 8;
const LEVEL_HOTTER_K = 15;
const LEVEL_HOT_C = 30;
const LEVEL_HOTTEST_C = 40;
/** and within this of it by the other scale */
export const LEVEL_NEAR_AIR_K = 15;
/** Days of outdoor air that grain is held against. */
export const LEVEL_AIR_DAYS = 30;

/** Median by day (UTC) of all that some tracks say; day number to value. */
export function dailyMedians(tracks: readonly Track[]): Map<number, number> {
  const days = new Map<number, number[]>();
  for (const track of tracks) {
    for (let i = 0; i < track.timeMs.length; i++) {
      if (track.use[i] === 0) continue;
      const day = Math.floor(track.timeMs[i] / DAY_MS);
      const values = days.get(day);
      if (values === undefined) days.set(day, [track.values[i]]);
      else values.push(track.values[i]);
    }
  }
  return new Map([...days].map(([day, values]) => [day, median(values)]));
}

/** Whether one record, read on the other scale, is at the level of another all through, and far from it as said. */
export function offByScale(
  own: ReadonlyMap<number, number>,
  other: ReadonlyMap<number, number>,
  mistake: UnitMistake,
): boolean {
  let shared = 0;
  let agree = 0;
  for (const [day, value] of own) {
    const reference = other.get(day);
    if (reference === undefined) continue;
    shared += 1;
    const apart = Math.abs(value - reference);
    if (apart >= LEVEL_APART_K && Math.abs(mistake.truth(value) - reference) <= Math.min(LEVEL_JOIN_K, apart / 2)) {
      agree += 1;
    }
  }
  return shared >= LEVEL_DAYS && agree >= LEVEL_SHARE * shared;
}

/** The same for a whole bin, held against the outdoor air of the last month: grain follows the season, not the other scale. */
export function offFromAir(
  grain: ReadonlyMap<number, number>,
  air: ReadonlyMap<number, number>,
  mistake: UnitMistake,
): boolean {
  let shared = 0;
  let agree = 0;
  for (const [day, value] of grain) {
    let sum = 0;
    let days = 0;
    for (let back = 0; back < LEVEL_AIR_DAYS; back++) {
      const mean = air.get(day - back);
      if (mean === undefined) continue;
      sum += mean;
      days += 1;
    }
    if (days < LEVEL_AIR_DAYS / 6) continue;
    shared += 1;
    const over = value - sum / days;
    const far = mistake.said === 'degF' ? over <= -LEVEL_COLDER_K : over >= LEVEL_HOTTER_K;
    if (far && Math.abs(mistake.truth(value) - sum / days) <= LEVEL_NEAR_AIR_K) agree += 1;
  }
  const days = Float64Array.from(grain.values()).sort();
  const hot = quantileOf(days, 0.5) >= LEVEL_HOT_C || quantileOf(days, 0.9) >= LEVEL_HOTTEST_C;
  return (mistake.said === 'degF' || hot) && shared >= LEVEL_DAYS && agree >= LEVEL_SHARE * shared;
}
