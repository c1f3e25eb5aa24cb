import type { Estimate } from '../../base/estimate.ts';
import type { Goal } from '../../season/season.ts';
import type { BinReview } from '../types.ts';
import type { CostMeasure } from './comparison.ts';

const MEASURES: Readonly<Record<Goal, CostMeasure>> = {
  dry: 'costPerBushelPoint',
  condition: 'costPerBushelPointAdded',
  cool: 'costPerBushel',
  hold: 'costPerBushel',
};

/** What bins of a goal are ranked by: points where the fans were run for points, else bushels. */
export function measureOf(goal: Goal): CostMeasure {
  return MEASURES[goal];
}

/** A bin's cost in the measure of its goal. */
export function measuredCost({ bin, fan, unitCosts }: BinReview): Estimate {
  const measure = measureOf(bin.goal);
  if (measure === 'costPerBushelPoint') return unitCosts.perBushelPoint;
  return measure === 'costPerBushelPointAdded' ? unitCosts.perBushelPointAdded : fan.costPerBushel;
}
