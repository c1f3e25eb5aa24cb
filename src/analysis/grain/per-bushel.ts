import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import { BUSHELS_REL_SD } from './grain-amount.ts';

/**
 * An amount over the bushels, with the bushels' own error joined to its interval as squares.
 *
 * @param bushels  legal bushels, above zero
 */
export function perBushel(of: Estimate, bushels: number): Estimate {
  if (of.value === null || of.interval === null) return of;
  const value = of.value / bushels;
  const own = Z90 * BUSHELS_REL_SD * Math.abs(value);
  const low = value - Math.hypot(value - of.interval[0] / bushels, own);
  return estimate(
    value,
    value >= 0 && of.interval[0] >= 0 ? Math.max(0, low) : low,
    value + Math.hypot(of.interval[1] / bushels - value, own),
  );
}
