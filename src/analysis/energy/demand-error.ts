import { type Estimate, Z90 } from '../../base/estimate.ts';
import type { MonthDemand } from '../../money/demand.ts';
import type { FanSeason } from '../types.ts';
import { PEAK_REL_SD } from './fan-cost.ts';
import { notBelowZero } from './parts.ts';

/** kW or money of a month's demand: errors of the fans' powers are independent, that of the peak is of their sum; what unknown time could add goes to the upper end. */
export function ofPeak(
  fans: readonly FanSeason[],
  { shares }: Pick<MonthDemand, 'shares'>,
  value: number,
  more: number,
): Estimate {
  const half = Z90 * Math.hypot(...shares.map((share, f) => share * value * fans[f].energyRelSd), PEAK_REL_SD * value);
  return notBelowZero(value, half, more);
}
