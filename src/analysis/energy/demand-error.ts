import { type Estimate, Z90 } from '../../base/estimate.ts';
import type { MonthDemand } from '../../money/demand.ts';
import type { FanSeason } from '../types.ts';
import { hasUnknown, PEAK_REL_SD } from './fan-cost.ts';
import { notBelowZero } from './parts.ts';
import type { TariffBill } from './tariff-bill.ts';

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

/**
 * By how much unknown time could raise a month's peak and what is billed, kW: by the power of the fans it is unknown of,
 * but no peak is higher than all fans together, and under a ratchet a higher peak costs nothing up to what is billed anyway.
 */
export function unknownMore(
  { fans }: TariffBill,
  { peakKw, billedKw }: Pick<MonthDemand, 'peakKw' | 'billedKw'>,
  fromMs: number,
  toMs: number,
): { peak: number; billed: number } {
  const ran = fans.filter((fan) => fan.onHours > 0);
  const power = (of: readonly FanSeason[]) => of.reduce((sum, fan) => sum + fan.energyKwh / fan.onHours, 0);
  const unknown = power(ran.filter((fan) => hasUnknown(fan, fromMs, toMs)));
  const peak = Math.min(unknown, Math.max(0, power(ran) - peakKw));
  return { peak, billed: Math.max(0, peakKw + peak - billedKw) };
}
