import type { Estimate } from '../../base/estimate.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Goal } from '../../season/season.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import { rowsWhere } from '../../tables/sensors.ts';
import { weatherRows } from '../air-rows.ts';
import { airLog } from '../fronts/air-log.ts';
import type { BinReview } from '../types.ts';
import { binConditions } from './bin-conditions.ts';
import type { BinComparison, Comparison, CostFactors, FillAir, RankGroup } from './comparison.ts';
import { costFactors } from './cost-factors.ts';
import { measuredCost, measureOf } from './cost-measure.ts';
import { costParts, type UnsureParts } from './cost-parts.ts';
import { costRatio } from './cost-ratio.ts';
import { fillAir, type OutdoorLog, outdoorLog, unknownAir } from './fill-air.ts';
import { notComparable } from './not-comparable.ts';
import { type SharedRank, shareRanks } from './share-ranks.ts';

const GOAL_ORDER: readonly Goal[] = ['dry', 'condition', 'cool', 'hold'];
const GOAL_WORDS: Readonly<Record<Goal, string>> = {
  dry: 'run to dry',
  condition: 'run to add moisture',
  cool: 'run to cool',
  hold: 'run to hold its grain',
};

/** The season's bins beside each other: who can be ranked with whom, at which places, and what the differences are the product of. */
export function compareBins(loaded: LoadedSeason, reviews: readonly BinReview[]): Comparison {
  const { season } = loaded;
  const outdoor = outdoorLog(weatherRows(loaded).rows);
  const faults = new Map(reviews.map((one) => [one.bin.id, notComparable(one, season.bins)]));
  const sound = reviews.filter((one) => faults.get(one.bin.id) === null);
  const groups = groupsOf(sound);
  const ranks = new Map<string, SharedRank>();
  for (const { binIds } of groups) {
    const of = binIds.map((id) => byId(sound, id));
    shareRanks(of.map((one) => measuredCost(one).interval as [number, number])).forEach((rank, i) => {
      ranks.set(binIds[i], rank);
    });
  }
  const bins = reviews.map((review): BinComparison => {
    const { bin } = review;
    const fault = faults.get(bin.id) ?? null;
    const rank = ranks.get(bin.id) ?? null;
    const parts = review.failure === null ? costParts(review) : (fault ?? '');
    const against = fault === null ? referenceOf(review, sound, groups) : null;
    const other = against === null ? null : costParts(against);
    return {
      binId: bin.id,
      measure: measureOf(bin.goal),
      cost: measuredCost(review),
      rank,
      why: rank === null ? (fault ?? aloneWhy(review, sound, reviews.length)) : null,
      factors: known(parts) ? asElsewhere(costFactors(parts), review) : null,
      factorsWhy: known(parts) ? null : parts,
      ratio:
        against !== null && known(parts) && other !== null && known(other)
          ? costRatio(parts, other, against.bin.id, against.bin.grain.crop === bin.grain.crop)
          : null,
      conditions: binConditions(review, airOf(review, loaded, outdoor)),
    };
  });
  return { bins, groups };
}

/** A number that stands on other pages too has the interval that it has there. */
function asElsewhere(factors: CostFactors, { rates, unitEnergy }: BinReview): CostFactors {
  const told = (own: Estimate, there: Estimate | undefined) =>
    there?.value != null && Math.abs(there.value / Number(own.value) - 1) < 1e-6 ? there : own;
  return {
    ...factors,
    hours: told(factors.hours, rates?.season?.hoursPerPoint),
    energy: told(factors.energy, unitEnergy?.kwhPerBushelPoint),
  };
}

function known(parts: UnsureParts | string): parts is UnsureParts {
  return typeof parts !== 'string';
}

function byId(reviews: readonly BinReview[], id: string): BinReview {
  const found = reviews.find((one) => one.bin.id === id);
  if (found === undefined) throw new Error(`no bin ${id}`);
  return found;
}

function cost(review: BinReview): number {
  return Number(measuredCost(review).value);
}

function cheapestFirst(reviews: readonly BinReview[]): BinReview[] {
  return [...reviews].sort((a, b) => cost(a) - cost(b));
}

function groupsOf(sound: readonly BinReview[]): RankGroup[] {
  const found = new Map<string, BinReview[]>();
  for (const review of sound) {
    const key = `${review.bin.goal} ${review.bin.grain.crop}`;
    found.set(key, [...(found.get(key) ?? []), review]);
  }
  return [...found.values()]
    .filter((of) => of.length > 1)
    .map((of) => ({
      goal: of[0].bin.goal,
      crop: of[0].bin.grain.crop,
      measure: measureOf(of[0].bin.goal),
      binIds: cheapestFirst(of).map((one) => one.bin.id),
    }))
    .sort((a, b) => GOAL_ORDER.indexOf(a.goal) - GOAL_ORDER.indexOf(b.goal) || b.binIds.length - a.binIds.length);
}

/** The bin to hold another against: the cheapest it is ranked with; for one that is alone with its crop the cheapest of its goal. */
function referenceOf(review: BinReview, sound: readonly BinReview[], groups: readonly RankGroup[]): BinReview | null {
  const group = groups.find(({ binIds }) => binIds.includes(review.bin.id));
  if (group !== undefined) return group.binIds[0] === review.bin.id ? null : byId(sound, group.binIds[0]);
  const others = sound.filter((one) => one.bin.goal === review.bin.goal && one.bin.id !== review.bin.id);
  const first = cheapestFirst(others)[0] ?? null;
  // Of two that are both alone the dearer is told, not each by the other.
  const alone = first !== null && !groups.some(({ binIds }) => binIds.includes(first.bin.id));
  return alone && cost(review) <= cost(first) ? null : first;
}

/** Why a bin that could be compared has nobody to be ranked with. */
function aloneWhy({ bin }: BinReview, sound: readonly BinReview[], all: number): string {
  const goal = GOAL_WORDS[bin.goal];
  if (all === 1) return 'There is no other bin to rank it with.';
  const others = sound.filter((one) => one.bin.goal === bin.goal && one.bin.id !== bin.id);
  if (others.length > 0)
    return `It is the only ${bin.grain.crop.replaceAll('-', ' ')} bin ${goal} whose cost is known; crops are not ranked with each other.`;
  return `It is the only bin ${goal} whose cost is known; other goals buy something else.`;
}

function airOf(review: BinReview, { season, tables }: LoadedSeason, outdoor: OutdoorLog): FillAir {
  const { bin, fan, failure } = review;
  if (failure !== null || fan.spans.startMs.length === 0) return unknownAir(fan.why ?? 'Its fan hours are not known.');
  const plenum = airLog(rowsWhere(tables.plenum, 'bin', bin.id, ['time', 'temp_c', 'flags']));
  const heated = statedHeaters(season, bin).length > 0;
  return fillAir(bin, fan.spans, plenum, outdoor, heated);
}
