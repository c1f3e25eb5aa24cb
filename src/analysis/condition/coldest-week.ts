import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import type { GrainDay } from './condition-types.ts';

const WEEK = 7;
const LEAST_DAYS = 4;

/** The coldest week of a bin's mean grain, and how far the last known week lies above it. @param sdK  of the mean, K */
export function coldestWeek(
  days: readonly GrainDay[],
  sdK: number,
): { coldest: Estimate; coldestMs: number | null; warmedSinceK: Estimate } {
  const weeks = days.flatMap((_, i) => {
    const known = days.slice(i, i + WEEK).flatMap((day) => (day.meanC === null ? [] : [day]));
    if (known.length < LEAST_DAYS || i + WEEK > days.length) return [];
    return [{ dayMs: days[i].dayMs, meanC: known.reduce((sum, day) => sum + (day.meanC ?? 0), 0) / known.length }];
  });
  if (weeks.length === 0) {
    const why = 'No week has temperatures of half of the grain on four of its days.';
    return { coldest: withheld(why), coldestMs: null, warmedSinceK: withheld(why) };
  }
  const coldest = weeks.reduce((a, b) => (b.meanC < a.meanC ? b : a));
  const since = weeks[weeks.length - 1].meanC - coldest.meanC;
  const half = Z90 * sdK;
  // What the same sensors have wrong in both weeks cancels; what the grain between them did does not.
  return {
    coldest: estimate(coldest.meanC, coldest.meanC - half, coldest.meanC + half),
    coldestMs: coldest.dayMs,
    warmedSinceK: estimate(since, Math.max(0, since - half), since + half),
  };
}
