import { compareBins } from '../analysis/compare/compare-bins.ts';
import type { BinComparison, Comparison, CostMeasure, RankGroup } from '../analysis/compare/comparison.ts';
import { FILL_DAYS } from '../analysis/compare/fill-air.ts';
import type { SharedRank } from '../analysis/compare/share-ranks.ts';
import type { BinReview, SeasonReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { cropOf } from '../grain/crops.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import { aimsAtTemperature } from '../season/goal.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import type { Goal } from '../season/season.ts';
import { perGrain } from './per-grain.ts';

/** The season's bins beside each other; worked out here where the review brings none. @throws what comparing throws */
export function comparisonOf({ loaded, review }: { loaded: LoadedSeason; review: SeasonReview }): Comparison {
  return review.compared ?? compareBins(loaded, review.bins);
}

/** A bin with what is said of it alone and beside the others. */
export interface Compared {
  review: BinReview;
  beside: BinComparison;
}

export const GOAL_DONE: Readonly<Record<Goal, string>> = {
  dry: 'run to dry',
  condition: 'run to add moisture',
  cool: 'run to cool',
  hold: 'run to hold the grain',
};

/** Goals in the order of the page. */
export const GOALS: readonly Goal[] = ['dry', 'condition', 'cool', 'hold'];

export function costQuantity(measure: CostMeasure): Quantity {
  return measure === 'costPerBushel' ? 'money per grain' : 'money per grain point';
}

/** `a bushel-point`, as the measure and the shown unit have it. */
export function perWhat(measure: CostMeasure, units: Units): string {
  const grain = units.system === 'us' ? 'a bushel' : 'a tonne';
  if (measure === 'costPerBushel') return grain;
  return measure === 'costPerBushelPoint' ? `${grain}-point` : `${grain}-point added`;
}

/** A bin's cost in its measure and the shown unit of grain. */
export function costShown({ review, beside }: Compared, units: Units): Estimate {
  return perGrain(beside.cost, review, units);
}

/** `1`, or `1 to 3` where it is shared. */
export function placeText({ best, worst }: SharedRank): string {
  return best === worst ? `${best}` : `${best} to ${worst}`;
}

/** `corn bins run to dry`. */
export function groupWords({ crop, goal }: Pick<RankGroup, 'crop' | 'goal'>): string {
  return `${cropWord(crop)} bins ${GOAL_DONE[goal]}`;
}

/** `corn`, `soybean`: before `bin`. */
function cropWord(crop: string): string {
  return crop.replaceAll('-', ' ');
}

export function cropName(crop: string): string {
  return cropOf(crop).name.toLowerCase();
}

export function shownBins(bins: readonly BinReview[], beside: readonly BinComparison[]): Compared[] {
  return bins.flatMap((review) => {
    const found = beside.find((one) => one.binId === review.bin.id);
    return found === undefined ? [] : [{ review, beside: found }];
  });
}

/** One goal of the page: its bins that have a cost, cheapest first, and the groups that are ranked. */
export interface GoalPart {
  goal: Goal;
  /** all bins of the goal */
  all: readonly Compared[];
  priced: readonly Compared[];
  groups: readonly RankGroup[];
}

/** The goals that have something to rank; where none has, the one with most bins whose cost can be shown side by side. */
export function goalParts(bins: readonly Compared[], groups: readonly RankGroup[]): GoalPart[] {
  const cost = ({ beside }: Compared) => beside.cost.value ?? Number.POSITIVE_INFINITY;
  const parts = GOALS.map((goal) => {
    const all = bins.filter((one) => one.review.bin.goal === goal);
    return {
      goal,
      all,
      priced: all.filter((one) => one.beside.cost.value !== null).sort((a, b) => cost(a) - cost(b)),
      groups: groups.filter((group) => group.goal === goal),
    };
  });
  const ranked = parts.filter((part) => part.groups.length > 0);
  if (ranked.length > 0) return ranked;
  return parts
    .filter(({ priced }) => priced.length > 1)
    .sort((a, b) => b.priced.length - a.priced.length)
    .slice(0, 1);
}

export function nameOf(bins: readonly Compared[], id: string): string {
  return bins.find((one) => one.beside.binId === id)?.review.bin.name ?? id;
}

/** Headings of the goals' sections. */
export const GOAL_TITLES: Readonly<Record<Goal, string>> = {
  dry: 'Drying',
  condition: 'Adding moisture',
  cool: 'Cooling',
  hold: 'Holding',
};

/** What the air at fill and the hours are, for the notes of their table. */
export function fillAirNotes(bins: readonly Compared[]): string[] {
  const stated = bins.filter(({ beside }) => beside.conditions.air.warmingFrom === 'stated');
  const named = (cools: boolean) =>
    stated.filter(({ review }) => aimsAtTemperature(review.bin.goal) === cools).map(({ review }) => review.bin.name);
  return [
    `Air at fill: means over the fan hours of the first ${FILL_DAYS} days on fresh grain, outdoors. Grain would settle at: the moisture it takes in that air once warmed by the fan; the interval spans the editions of the isotherm, not what the weather’s instruments may be off. Fan hours are all of the season’s, those that cooled too.`,
    ...(named(false).length === 0
      ? []
      : [
          `The fan’s warming was not logged in ${listed(named(false))}: 2 °C (3.6 °F) is taken, 1.7 to 2.8 °C (3 to 5 °F) published.`,
        ]),
    ...(named(true).length === 0
      ? []
      : [
          `The fan’s warming was not logged in ${listed(named(true))}: 0.8 °C (1.4 °F) is taken, 0.4 to 1.3 °C (0.8 to 2.4 °F) at the low pressures of aeration by the same figures.`,
        ]),
  ];
}
