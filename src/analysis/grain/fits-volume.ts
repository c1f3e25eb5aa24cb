import type { WeightByVolume } from './weight-by-volume.ts';

/** Tickets and volume may differ by this many standard errors of the volume before one of them is wrong. */
const FIT_SDS = 2.5;

/** A weight over the scale is in keeping with what depth and test weight tell; packing only adds. */
export function fitsVolume(weightKg: number, { weightKg: middle, levelRelSd, packingMost }: WeightByVolume): boolean {
  const ratio = weightKg / middle - 1;
  const less = FIT_SDS * levelRelSd;
  return ratio >= -less && ratio <= Math.hypot(less, packingMost);
}
