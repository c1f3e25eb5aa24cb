import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import type { GrainDay, OutdoorGap } from './condition-types.ts';
import type { PlaceDays } from './place-days.ts';

/** So much warmer than the average outdoor air moisture was seen to move in the grain: about 20 °F. ndsu-2009-wheat-barley */
export const MOVING_K = 20 / 1.8;
/** Of the days of storage, those that have to be known. */
const LEAST_KNOWN = 0.5;

/**
 * Days on which the mean grain was so much warmer than the outdoor mean that moisture begins to move.
 *
 * @param sdK  standard error of the grain's mean temperature, K
 */
export function outdoorGap(days: readonly GrainDay[], sdK: number): OutdoorGap {
  const told = days.flatMap(({ dayMs, meanC, meanLowC, meanHighC, outdoorC }) =>
    meanC === null || outdoorC === null
      ? []
      : [
          {
            dayMs,
            gapK: meanC - outdoorC,
            lowK: (meanLowC ?? meanC) - outdoorC,
            highK: (meanHighC ?? meanC) - outdoorC,
          },
        ],
  );
  if (days.length === 0 || told.length < LEAST_KNOWN * days.length) {
    const why = days.some((day) => day.outdoorC !== null)
      ? 'On more than half of the days grain or outdoor air is not known.'
      : 'No outdoor temperatures of 20 of 30 days before are known.';
    return { days: withheld(why), mostK: withheld(why), mostMs: null };
  }
  const half = Z90 * sdK;
  const over = (of: (day: (typeof told)[number]) => number) => told.filter((day) => of(day) >= MOVING_K).length;
  const most = told.reduce((a, b) => (b.gapK > a.gapK ? b : a));
  const open = days.length - told.length;
  return {
    days: estimate(
      over(({ gapK }) => gapK),
      over(({ lowK }) => lowK - half),
      over(({ highK }) => highK + half) + open,
    ),
    mostK: estimate(
      most.gapK,
      Math.max(...told.map(({ lowK }) => lowK)) - half,
      Math.max(...told.map(({ highK }) => highK)) + half,
    ),
    mostMs: most.dayMs,
  };
}

/**
 * Days that some places were within a range of temperatures, weighed by their grain; unknown days widen the upper end, days that
 * were only carried between readings the end that they may have lain on.
 *
 * @param range  C, both ends in
 * @param sdK    standard error of the grain's mean temperature, K
 */
export function daysOfGrain(
  { toldC, lowC, highC }: Pick<PlaceDays, 'toldC' | 'lowC' | 'highC'>,
  shares: readonly number[],
  [coldest, warmest]: readonly [number, number],
  sdK: number,
): Estimate {
  const count = toldC[0]?.length ?? 0;
  const sums = (holds: (place: number, day: number) => boolean) => {
    let sum = 0;
    let unknown = 0;
    for (let d = 0; d < count; d++) {
      let weight = 0;
      let of = 0;
      for (let p = 0; p < toldC.length; p++) {
        if (Number.isNaN(toldC[p][d])) continue;
        weight += shares[p];
        if (holds(p, d)) of += shares[p];
      }
      if (weight > 0) sum += of / weight;
      else unknown += 1;
    }
    return { sum, unknown };
  };
  const { sum, unknown } = sums((p, d) => toldC[p][d] >= coldest && toldC[p][d] <= warmest);
  if (count === 0 || unknown > (1 - LEAST_KNOWN) * count)
    return withheld('On more than half of the days no temperature of the grain is known.');
  const shifts = [-Z90 * sdK, 0, Z90 * sdK];
  const surely = shifts.map((k) => sums((p, d) => lowC[p][d] + k >= coldest && highC[p][d] + k <= warmest).sum);
  const perhaps = shifts.map((k) => sums((p, d) => highC[p][d] + k >= coldest && lowC[p][d] + k <= warmest).sum);
  return estimate(sum, Math.min(sum, ...surely), Math.max(sum, ...perhaps) + unknown);
}
