import { AS_LOGGED, IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { StrategyYears } from '../analysis/strategies/strategy-years.ts';
import type { PlannedBin } from '../analysis/strategies/sweep-plan.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { BinReview } from '../analysis/types.ts';
import { NO_PRICE } from '../analysis/what-if/what-if-types.ts';
import { type Estimate, scaled, withheld } from '../base/estimate.ts';
import type { Units } from '../report/units.ts';
import { NEAR } from '../simulation/doubt/surely-cheapest.ts';
import { perGrain } from './per-grain.ts';
import { wayTitleOf } from './way-title.ts';
import { quoted } from './words.ts';

/** A bin of a sweep with what its strategies came to over the years. */
export interface SweptBin {
  planned: PlannedBin;
  review: BinReview | undefined;
  told: readonly StrategyYears[];
}

/** How a number of one year alone is known. */
export const MODEL = 'by the model';

const APART: ReadonlyMap<string, string> = new Map([
  [AS_LOGGED, 'As logged, this season'],
  [IN_HINDSIGHT, 'Best in hindsight'],
]);

/** The bins of which some strategy was run, with their reviews. */
export function sweptBins({ plan, strategies }: SweepSummary, reviews: readonly BinReview[]): SweptBin[] {
  return plan.bins
    .map((planned) => ({
      planned,
      review: reviews.find(({ bin }) => bin.id === planned.id),
      told: strategies.filter((one) => one.bin === planned.id && one.years > 0),
    }))
    .filter(({ told }) => told.length > 0);
}

/** What readers call a strategy of a sweep, its chosen parameters with it. */
export function titleOf(strategy: string, units: Units): string {
  return APART.get(strategy) ?? wayTitleOf(strategy, units) ?? strategy;
}

/** A title as it stands within a sentence; units keep their capitals, and one with a comma of its own is quoted, or it reads as two. */
export function small(title: string): string {
  const lower = title.charAt(0).toLowerCase() + title.slice(1);
  return lower.includes(',') ? quoted(lower) : lower;
}

/** The log and the search in hindsight are no rules that a controller could be set to. */
export function isApart(strategy: string): boolean {
  return APART.has(strategy);
}

/** `this season`, or the year. */
export function weatherSaid(weather: string): string {
  return weather === 'season' ? 'this season' : weather;
}

/** Of reaching the target by the end. */
export function chanceOf({ reached }: StrategyYears): number {
  return reached[0].chance ?? 0;
}

export function yearsIn(bins: readonly SweptBin[]): number {
  return Math.max(...bins.flatMap(({ told }) => told.map(({ years }) => years)));
}

/** The rules of a bin that reach its target in most years. */
export interface Surest {
  /** of these the cheapest; the first where no cost is known */
  one: StrategyYears;
  /** that do as often and for about as much, cheapest first; all that do as often where no cost is known */
  near: readonly StrategyYears[];
  /** whether costs are known */
  priced: boolean;
}

/** The rules that a controller could be set to. */
export function rulesIn({ told }: SweptBin): StrategyYears[] {
  return told.filter(({ strategy }) => !isApart(strategy));
}

/** Of the middle year; of one or two years, which have none, their mean. Null without a price. */
export function usualCost({ byCost, cost }: StrategyYears): number | null {
  return byCost.p50?.value ?? cost.mean;
}

/** The rule that reaches most surely, and of these the cheapest; null where none reaches in any year. */
export function surest(bin: SweptBin): Surest | null {
  const able = rulesIn(bin).filter((one) => chanceOf(one) > 0);
  const most = Math.max(...able.map(chanceOf));
  const often = able.filter((one) => chanceOf(one) === most);
  const priced = often.filter((one) => usualCost(one) !== null);
  priced.sort((a, b) => Number(usualCost(a)) - Number(usualCost(b)));
  const [one, ...others] = priced.length > 0 ? priced : often;
  if (one === undefined) return null;
  if (priced.length === 0) return { one, near: others, priced: false };
  const least = Number(usualCost(one));
  return { one, near: others.filter((other) => Number(usualCost(other)) <= NEAR * least), priced: true };
}

/** Middle year with its range: tenth to ninetieth, of few years the outermost. One year is its own middle, two have a mean. */
export function moneyOf({ byCost, cost }: StrategyYears): Estimate {
  if (cost.mean === null) return withheld(NO_PRICE);
  if (cost.years === 1) return { value: cost.mean, interval: null, why: null };
  const [low, high] = byCost.p10 === null ? [cost.least, cost.most] : [byCost.p10.value, byCost.p90.value];
  const value = byCost.p50?.value ?? cost.mean;
  return { value, interval: low === null || high === null ? null : [low, high], why: null };
}

/** Money of a bin as money for each measure of its grain. */
export function grainOf(money: Estimate, { planned, review }: SweptBin, units: Units): Estimate {
  if (planned.bushels === null || review === undefined) return withheld('The bushels are not known.');
  return perGrain(scaled(money, 1 / planned.bushels), review, units);
}
