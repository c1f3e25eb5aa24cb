import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { sumOf } from './hour-sums.ts';
import { type Judged, type JudgedCases, spanned } from './judged-hours.ts';
import type { PieceCosts } from './piece-costs.ts';
import { VERDICTS } from './useful-hours-types.ts';

const AGAINST = VERDICTS.indexOf('against');
const UNKNOWN = VERDICTS.indexOf('unknown');

/** Energy cost of the hours against the goal: the interval joins that of the hours with the error of the energy. */
export function againstCost({ cost, relSd, why }: PieceCosts, cases: JudgedCases): Estimate {
  if (why !== null) return withheld(why);
  const of = (code: number) => (one: Judged) =>
    one.verdicts.reduce((sum, verdict, i) => sum + (verdict === code ? cost[i] : 0), 0);
  const { value, interval } = spanned(cases, of(AGAINST), sumOf(cost), of(UNKNOWN)(cases.main));
  if (value === null || interval === null) return withheld('Not known.');
  const [low, high] = interval;
  const lower = Math.hypot(value - low, Z90 * relSd * value);
  return estimate(value, Math.max(0, value - lower), value + Math.hypot(high - value, Z90 * relSd * value));
}
