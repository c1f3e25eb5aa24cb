import { type Estimate, estimate } from '../../base/estimate.ts';
import type { BinGrainAmount } from '../types.ts';

/** Bushels with their 90 % interval, or a number that counts as known exactly. */
export type Bushels = Estimate | number;

/** The bushels of a bin as an estimate; null where they are not known. */
export function bushelsOf({ bushels, bushelsInterval }: BinGrainAmount): Estimate | null {
  return bushels === null ? null : { value: bushels, interval: bushelsInterval ?? null, why: null };
}

/**
 * An amount over the bushels, with the bushels' own error joined to its interval as squares: more bushels make less of
 * it each, so their upper end goes to the lower one.
 *
 * @param bushels  legal bushels, above zero
 */
export function perBushel(of: Estimate, bushels: Bushels): Estimate {
  const { value: count, interval } = typeof bushels === 'number' ? { value: bushels, interval: null } : bushels;
  if (of.value === null || of.interval === null || count === null) return of;
  const value = of.value / count;
  const ends = (interval ?? [count, count]).map((end) => Number(of.value) / end - value);
  const down = Math.min(...ends, 0);
  const up = Math.max(...ends, 0);
  const low = value - Math.hypot(value - of.interval[0] / count, down);
  return estimate(
    value,
    value >= 0 && of.interval[0] >= 0 ? Math.max(0, low) : low,
    value + Math.hypot(of.interval[1] / count - value, up),
  );
}

/** Are there any bushels to share by? */
export function anyBushels(bushels: Bushels | null): bushels is Bushels {
  const count = typeof bushels === 'object' ? (bushels?.value ?? 0) : bushels;
  return count > 0;
}
