import type { WeightByVolume } from './weight-by-volume.ts';

/** A pound is 0.45 kg: no loads missing or weighed twice, and no depth read wrong, make as much or more as a usual thing. */
const TIMES = 1.8;

/**
 * What loads whose sum is out of all proportion to depth and test weight may be: of another unit than season.yaml says, or not
 * the bin's.
 *
 * @param loadsSaid  `their 13 loads weigh`
 * @returns          null where the sum is in proportion
 */
export function otherUnitSaid(loadsSaid: string, weightKg: number, volume: WeightByVolume | null): string | null {
  if (volume === null) return null;
  const ratio = weightKg / volume.weightKg;
  if (ratio > 1 / TIMES && ratio < TIMES) return null;
  const unit = 'the unit of their weight is another than season.yaml says';
  return ratio < 1
    ? `${loadsSaid} ${(100 * ratio).toPrecision(2)} % of what depth and test weight tell, so ${unit}, or most of them are missing`
    : `${loadsSaid} ${ratio.toPrecision(2)} times what depth and test weight tell, so ${unit}, or much of it is other grain`;
}
