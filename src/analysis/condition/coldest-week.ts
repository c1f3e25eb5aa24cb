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
    const mean = (of: (day: GrainDay) => number | null) =>
      known.reduce((sum, day) => sum + (of(day) ?? day.meanC ?? 0), 0) / known.length;
    const [meanC, lowC, highC] = [mean((day) => day.meanC), mean((day) => day.meanLowC), mean((day) => day.meanHighC)];
    return [{ dayMs: days[i].dayMs, meanC, lowC, highC }];
  });
  if (weeks.length === 0) {
    const why = 'No week has temperatures of half of the grain on four of its days.';
    return { coldest: withheld(why), coldestMs: null, warmedSinceK: withheld(why) };
  }
  const coldest = weeks.reduce((a, b) => (b.meanC < a.meanC ? b : a));
  // Another week may have been colder where days are only carried between readings.
  const lowC = Math.min(...weeks.map((week) => week.lowC));
  const highC = Math.min(...weeks.map((week) => week.highC));
  const last = weeks[weeks.length - 1];
  const since = last.meanC - coldest.meanC;
  const half = Z90 * sdK;
  // What the same sensors have wrong in both weeks cancels; what the grain between them did does not.
  return {
    coldest: estimate(coldest.meanC, lowC - half, highC + half),
    coldestMs: coldest.dayMs,
    warmedSinceK: estimate(since, Math.max(0, last.lowC - highC - half), last.highC - lowC + half),
  };
}
