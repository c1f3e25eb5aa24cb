import type { Estimate } from '../../base/estimate.ts';

/** A demand charge of one month for one way of running the same fan hours. */
export interface DemandWay {
  /** kW, and the same with its interval; NaN where the way is withheld */
  peakKw: number;
  peak: Estimate;
  /** after the ratchet */
  billedKw: number;
  cost: Estimate;
}

/** One demand rule's month as the fans ran, and as they might have; money in the season's currency, the tariff's fans alone. */
export interface DemandWays {
  tariffId: string;
  /** index of the rule in the tariff */
  rule: number;
  /** local calendar month, `2024-10` */
  month: string;
  asRun: DemandWay;
  /** no two starts in one quarter hour */
  startsApart: DemandWay;
  /** each fan the same hours of each local day, in turns */
  inTurns: DemandWay;
  /** money below which no order of the same hours of the day can bring the charge */
  leastCost: Estimate;
  /** as run less in turns */
  saving: Estimate;
}
