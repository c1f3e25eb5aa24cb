import type { Estimate } from '../../base/estimate.ts';
import type { Goal } from '../../season/season.ts';
import type { SharedRank } from './share-ranks.ts';

/** What bins of a goal are ranked by. */
export type CostMeasure = 'costPerBushelPoint' | 'costPerBushelPointAdded' | 'costPerBushel';

/**
 * What a bin's cost is the product of: money per kWh, all charges over those for energy, power per bushel while the
 * fan runs, fan hours (for a point, where the measure is per point).
 */
export const COST_FACTORS = ['price', 'charges', 'power', 'hours'] as const;
export type CostFactor = (typeof COST_FACTORS)[number];

/** A bin's own factors; their product is its cost in the measure. */
export interface CostFactors {
  /** energy cost over energy, money per kWh */
  price: Estimate;
  /** cost with demand, connected load and heat over the energy cost, ratio */
  charges: Estimate;
  /** energy over fan hours and bushels, kW per bushel */
  power: Estimate;
  /** fan hours over points, h per point; for a cost per bushel the fan hours, h */
  hours: Estimate;
  /** the last two together: kWh per bushel, or per bushel and point */
  energy: Estimate;
}

/** One factor of a bin over that of the bin it is held against. */
export interface FactorRatio {
  times: Estimate;
  /** logarithm of the factor's ratio over that of the cost's: the shares of all factors add up to 1; withheld where the costs cannot be told apart */
  share: Estimate;
}

/** A bin's cost over that of the bin it is held against, and what the ratio is the product of. */
export interface CostRatio {
  againstId: string;
  /** false: the other bin holds another crop */
  sameCrop: boolean;
  times: Estimate;
  /** power and hours together: they trade off, as more air draws more power and needs fewer hours */
  energy: FactorRatio;
  factors: Readonly<Record<CostFactor, FactorRatio>>;
}

/** The air that a bin's fans took in while it was fresh: the fan-on hours of the first weeks. */
export interface FillAir {
  fromMs: number | null;
  toMs: number | null;
  /** fan hours in that time */
  fanHours: number;
  /** means over the fan hours, measured: outdoor air, before the fan warms it; null where not known */
  outdoorC: number | null;
  /** fraction */
  outdoorRh: number | null;
  /** moisture at which the crop settles in the air as it enters, warmed by the fan; wet basis, fraction */
  equilibriumWb: Estimate;
  /** the same by every edition of the crop's isotherm that answers, in the order of the table */
  byIsotherm: readonly { isotherm: string; moistureWb: number }[];
  /** what told the fan's warming; null where the air is not known */
  warmingFrom: 'plenum' | 'stated' | 'none' | null;
  /** why something above is missing */
  why: string | null;
}

/** What a bin's hours and power go with. */
export interface BinConditions {
  /** cfm per bushel of 1.2445 ft3 */
  airflowCfmPerBushel: Estimate;
  /** wet basis, fractions */
  startWb: Estimate;
  endWb: Estimate;
  startC: Estimate;
  endC: Estimate;
  air: FillAir;
}

/** One bin beside the others. */
export interface BinComparison {
  binId: string;
  measure: CostMeasure;
  /** in the measure: money per bushel, or per bushel and point */
  cost: Estimate;
  /** null: not ranked; `why` says why */
  rank: SharedRank | null;
  why: string | null;
  /** null: not known; `factorsWhy` says why */
  factors: CostFactors | null;
  factorsWhy: string | null;
  /** held against the cheapest; null for the cheapest itself and where there is none to hold it against */
  ratio: CostRatio | null;
  conditions: BinConditions;
}

/** Bins that can be ranked with each other: one goal, one crop. */
export interface RankGroup {
  goal: Goal;
  crop: string;
  measure: CostMeasure;
  /** ids, cheapest first */
  binIds: readonly string[];
}

/** The season's bins beside each other. */
export interface Comparison {
  /** in the order of season.yaml */
  bins: readonly BinComparison[];
  /** groups of two bins and more, largest first, drying before the other goals */
  groups: readonly RankGroup[];
}
