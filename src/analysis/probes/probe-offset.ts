import { estimate, withheld, Z95 } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import { type ErrorPart, firmPart, joinErrors } from '../moisture/error-part.ts';
import type { ProbeOffset, ProbePair } from './probe-types.ts';

/** A hand meter against the oven, points that 95 % of readings keep: common practice; wider on cold grain. */
export const METER_LIMIT = 0.5;
export const COLD_METER_LIMIT = 1;
/** With this many warm samples the cold ones are not needed. */
const ENOUGH_WARM = 3;
/** Among five and more, a sample this many standard errors from the middle is taken as mistaken or misplaced. */
const FAR_SDS = 3.5;
const LEAST_TO_JUDGE = 5;

/**
 * Which pairs count: in still air, for a cable in moving air shows the air that passes (while the first front of
 * evaporation crosses a bin by 2 points and more); warm ones where there are enough; none far from all others.
 */
export function countedPairs(pairs: readonly ProbePair[]): { pairs: ProbePair[]; meterLimit: number; far: number } {
  const still = pairs.filter((one) => one.air === 'still');
  const warm = still.filter((one) => !one.cold);
  const pool = warm.length >= ENOUGH_WARM ? warm : still;
  const middle = median(pool.map((one) => one.offset));
  const scatter = 1.4826 * median(pool.map((one) => Math.abs(one.offset - middle)));
  const isFar = (one: ProbePair) =>
    pool.length >= LEAST_TO_JUDGE && Math.abs(one.offset - middle) > FAR_SDS * Math.max(scatter, one.sd);
  return {
    pairs: pairs.map((one) => {
      const apart = pool.includes(one) && isFar(one);
      return { ...one, counted: pool.includes(one) && !apart, far: apart };
    }),
    meterLimit: pool.some((one) => one.cold) ? COLD_METER_LIMIT : METER_LIMIT,
    far: pool.filter(isFar).length,
  };
}

/**
 * Mean offset of several pairs, each weighing by its standard error; where they scatter more than these say, the scatter
 * counts (Birge's ratio). The meter's own error is the same in all of them and stays whole.
 *
 * @param meterLimit  points that 95 % of readings keep
 * @source  weighted mean and Birge ratio: R. T. Birge, Phys. Rev. 40 (1932), 207; from memory
 */
export function probeOffset(pairs: readonly ProbePair[], meterLimit: number): ProbeOffset {
  if (pairs.length === 0) return { offset: withheld('No hand sample can be held against a sensor.'), pairs: 0 };
  const value = weightedOffset(pairs);
  const { half90 } = joinErrors([scatterPart(pairs), firmPart('the hand meter', meterLimit / Z95)]);
  return { offset: estimate(value, value - half90, value + half90), pairs: pairs.length };
}

/** An offset with its standard error, points. */
type Told = Pick<ProbePair, 'offset' | 'sd'>;

export function weightedOffset(pairs: readonly Told[]): number {
  const total = pairs.reduce((sum, one) => sum + one.sd ** -2, 0);
  return pairs.reduce((sum, one) => sum + one.offset * one.sd ** -2, 0) / total;
}

/** The error of the weighted mean by what is each sample's own. */
export function scatterPart(pairs: readonly Told[]): ErrorPart {
  const total = pairs.reduce((sum, one) => sum + one.sd ** -2, 0);
  const mean = weightedOffset(pairs);
  const chi = pairs.reduce((sum, one) => sum + ((one.offset - mean) / one.sd) ** 2, 0);
  const df = pairs.length - 1;
  const birge = df === 0 ? 1 : Math.sqrt(chi / df);
  return {
    cause: 'places and sampling of the hand samples',
    sd: Math.max(1, birge) / Math.sqrt(total),
    df: birge > 1 ? df : Number.POSITIVE_INFINITY,
  };
}
