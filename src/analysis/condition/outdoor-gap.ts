import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import type { GrainDay, OutdoorGap } from './condition-types.ts';

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
  const told = days.flatMap((day) =>
    day.meanC === null || day.outdoorC === null ? [] : [{ dayMs: day.dayMs, gapK: day.meanC - day.outdoorC }],
  );
  if (days.length === 0 || told.length < LEAST_KNOWN * days.length) {
    const why = days.some((day) => day.outdoorC !== null)
      ? 'On more than half of the days grain or outdoor air is not known.'
      : 'No outdoor temperatures of 20 of 30 days before are known.';
    return { days: withheld(why), mostK: withheld(why), mostMs: null };
  }
  const over = (addK: number) => told.filter(({ gapK }) => gapK + addK >= MOVING_K).length;
  const most = told.reduce((a, b) => (b.gapK > a.gapK ? b : a));
  const half = Z90 * sdK;
  const open = days.length - told.length;
  return {
    days: estimate(over(0), over(-half), over(half) + open),
    mostK: estimate(most.gapK, most.gapK - half, most.gapK + half),
    mostMs: most.dayMs,
  };
}

/** Days that a condition holds at some places, weighed by their grain; unknown days widen the upper end. */
export function daysOfGrain(
  tempC: readonly Float64Array[],
  shares: readonly number[],
  holds: (tempC: number) => boolean,
  sdK: number,
): Estimate {
  const count = tempC[0]?.length ?? 0;
  const sums = (addK: number) => {
    let sum = 0;
    let unknown = 0;
    for (let d = 0; d < count; d++) {
      let weight = 0;
      let of = 0;
      for (let p = 0; p < tempC.length; p++) {
        if (Number.isNaN(tempC[p][d])) continue;
        weight += shares[p];
        if (holds(tempC[p][d] + addK)) of += shares[p];
      }
      if (weight > 0) sum += of / weight;
      else unknown += 1;
    }
    return { sum, unknown };
  };
  const { sum, unknown } = sums(0);
  if (count === 0 || unknown > (1 - LEAST_KNOWN) * count)
    return withheld('On more than half of the days no temperature of the grain is known.');
  const ends = [sums(-Z90 * sdK).sum, sums(Z90 * sdK).sum];
  return estimate(sum, Math.min(sum, ...ends), Math.max(sum, ...ends) + unknown);
}
