import type { Estimate } from '../../base/estimate.ts';

/** One tariff's month; money in the season's currency. */
export interface TariffMonth {
  tariffId: string;
  /** local calendar month, `2024-10` */
  month: string;
  energyKwh: number;
  energyCost: number;
  /** per demand rule: measured peak, billed peak (after ratchet), when the peak began, cost */
  demand: readonly {
    peakKw: number;
    billedKw: number;
    /** null where no fan ran while the rule held, and where a meter tells how many hours a fan ran in the month, but not when */
    atMs: number | null;
    cost: number;
    /** the same with their intervals */
    told?: { peak: Estimate; billed: Estimate; cost: Estimate };
  }[];
  fixed: number;
  connected: number;
  /** what the minimum adds, 0 where the charges exceed it */
  minimumTopUp: number;
  total: number;
  /** the same with their intervals; money for all demand rules together */
  told?: { energyKwh: Estimate; energyCost: Estimate; demandCost: Estimate; minimumTopUp: Estimate; total: Estimate };
}
