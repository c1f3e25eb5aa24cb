import type { GrainDay } from './condition-types.ts';
import { meanBefore, type OutdoorDays } from './outdoor-days.ts';
import type { PlaceDays } from './place-days.ts';

/** Places that stand for less of the grain than this do not tell a day's mean. */
const LEAST_SHARE = 0.5;

/**
 * A bin's grain by local day beside the outdoor air of the 30 days before.
 *
 * @param shares  of the grain, by place; 0 where a place has none
 */
export function grainDays(
  { dayMs, toldC, lowC, highC }: PlaceDays,
  shares: readonly number[],
  outdoors: OutdoorDays,
): GrainDay[] {
  return Array.from(dayMs, (ms, d) => {
    const known = toldC.flatMap((temps, p) =>
      Number.isNaN(temps[d]) ? [] : [{ tempC: temps[d], lowC: lowC[p][d], highC: highC[p][d], share: shares[p] }],
    );
    const weight = known.reduce((sum, one) => sum + one.share, 0);
    const told = weight >= LEAST_SHARE;
    const mean = (of: (one: (typeof known)[number]) => number) =>
      told ? known.reduce((sum, one) => sum + one.share * of(one), 0) / weight : null;
    return {
      dayMs: ms,
      meanC: mean((one) => one.tempC),
      meanLowC: mean((one) => one.lowC),
      meanHighC: mean((one) => one.highC),
      warmestC: told ? Math.max(...known.map((one) => one.highC)) : null,
      coldestC: told ? Math.min(...known.map((one) => one.lowC)) : null,
      outdoorC: meanBefore(outdoors, ms),
    };
  });
}
