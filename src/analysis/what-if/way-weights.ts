import type { Estimate } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import { overdryingWeight } from '../../money/overdrying-weight.ts';
import type { Season } from '../../season/season.ts';
import { clearlyCheapest, surelyCheapest, type Tried } from '../../simulation/doubt/surely-cheapest.ts';
import { wantedMoisture } from '../moisture/wanted-moisture.ts';
import type { BinReview } from '../types.ts';
import { spanned } from './spanned.ts';

/** A run of a way, and how dry it left the grain. */
export interface TriedEnd extends Tried {
  /** mean of the bin, wet basis */
  endMoistureWb: number;
}

/** What a way gives away by drying beyond what is paid for. Ranges span the runs that the cost's range spans. */
export interface WayWeight {
  id: string;
  /** weight below `belowWb` at the stated price, money */
  givenAway: Estimate;
  /** and the way's cost with it, money */
  together: Estimate;
  /** its cost with what it gives away beyond the season as run, below 0 where that is less, run by run: a cost to set against the cost as run */
  beyondLogged: Estimate;
}

/** A bin's ways with the weight counted that each dries away. */
export interface WayWeights {
  /** moisture below which weight is given away: the market's base, or the bin's target where that is lower */
  belowWb: number;
  /** as they were given */
  ways: readonly WayWeight[];
  /** id of the rule that comes cheapest with it, see `surelyCheapest`; null where none reaches, or no cost is known */
  pick: string | null;
  /** whether it comes within 5 % of the cheapest in nine of ten runs */
  clear: boolean;
}

interface Way {
  id: string;
  /** [runs], the bin as fitted first */
  tried: readonly TriedEnd[];
}

/**
 * The ways of a bin to be dried with what each gives away: fans that run on while the last wet layer dries make the rest lighter, and
 * weight below the market's base is not paid for.
 *
 * @param logged  the season as run, tried in the same runs: counted beside the rules, and no rule to choose
 * @returns       null where the bin is not to be dried, or price, limit or dry matter are not known; a price of 0 tells no weight's worth
 * @source        conservation of dry matter, see `overdryingWeight`
 */
export function wayWeights(season: Season, review: BinReview, logged: Way, rules: readonly Way[]): WayWeights | null {
  const { bin, grain } = review;
  const price = season.prices[bin.grain.crop];
  const belowWb = wantedMoisture(season, bin);
  if (bin.goal !== 'dry' || price === undefined || price.pricePerBushel <= 0) return null;
  if (belowWb === null || grain.dryMatterKg === null) return null;
  const bushels = grain.dryMatterKg / cropOf(bin.grain.crop).legalBushelKg;
  const lost = (endWb: number) => price.pricePerBushel * overdryingWeight(bushels, belowWb, endWb);
  const counted = ({ tried }: Way) =>
    tried.map(({ cost, reached, endMoistureWb }) => ({ cost: cost + lost(endMoistureWb), reached }));
  const best = surelyCheapest(rules.map(counted));
  return {
    belowWb,
    ways: [logged, ...rules].map((way) => ({
      id: way.id,
      givenAway: spanned(way.tried.map(({ endMoistureWb }) => lost(endMoistureWb))),
      together: spanned(counted(way).map(({ cost }) => cost)),
      beyondLogged: spanned(counted(way).map(({ cost }, k) => cost - lost(logged.tried[k].endMoistureWb))),
    })),
    pick: best === null ? null : rules[best.index].id,
    clear: best !== null && clearlyCheapest(best),
  };
}
