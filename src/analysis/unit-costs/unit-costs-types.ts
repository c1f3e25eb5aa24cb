import type { Estimate } from '../../base/estimate.ts';

export interface UnitCosts {
  costPerPoint: Estimate;
  perBushelPoint: Estimate;
  costPerPointAdded: Estimate;
  perBushelPointAdded: Estimate;
  /** one sentence for the block */
  why: string | null;
  whyAdded: string | null;
}
