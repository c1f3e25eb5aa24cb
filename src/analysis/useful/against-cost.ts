import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import type { FanTime } from './counted-hours.ts';
import { sumOf } from './hour-sums.ts';
import { type Judged, mostOf, spanned } from './judged-hours.ts';
import type { PieceCosts } from './piece-costs.ts';
import { VERDICTS } from './useful-hours-types.ts';

const AGAINST = VERDICTS.indexOf('against');
const UNKNOWN = VERDICTS.indexOf('unknown');

/**
 * Energy cost of the hours against the goal: the interval joins that of the hours with the error of the energy; the upper end
 * holds what hours that nobody can tell, and fans whose log is silent, would have cost.
 */
export function againstCost(
  { cost, more, relSd, why }: PieceCosts,
  { more: silent, why: silentWhy }: PieceCosts,
  { cases, silentCases }: Pick<FanTime, 'cases' | 'silentCases'>,
): Estimate {
  if (why !== null || silentWhy !== null) return withheld(why ?? silentWhy ?? '');
  const of = (costs: Float64Array, codes: readonly number[]) => (one: Judged) =>
    one.verdicts.reduce((sum, verdict, i) => sum + (codes.includes(verdict) ? costs[i] : 0), 0);
  const maybe = of(silent, [AGAINST, UNKNOWN]);
  const { value, interval } = spanned(cases, of(cost, [AGAINST]), {
    most: sumOf(cost) + sumOf(more) + sumOf(silent),
    more: of(cost, [UNKNOWN])(cases.main) + of(more, [AGAINST, UNKNOWN])(cases.main) + mostOf(silentCases, maybe),
    sd: 0,
  });
  if (value === null || interval === null) return withheld('Not known.');
  const [low, high] = interval;
  const lower = Math.hypot(value - low, Z90 * relSd * value);
  return estimate(value, Math.max(0, value - lower), value + Math.hypot(high - value, Z90 * relSd * value));
}
