import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { overdryingWeight } from '../../money/overdrying-weight.ts';

/**
 * Weight lost for sale because the grain ended drier than the market's base: the bushels that its dry matter would make
 * at the base moisture less those that it makes at the end. None where it ended wetter.
 *
 * @param dryMatterKg    of the bin, with its 90 % interval
 * @param baseWb         moisture of the market base, wet basis, fraction
 * @param end            moisture at the end, wet basis, fraction, with its 90 % interval
 * @param legalBushelKg  weight of a legal bushel
 * @returns              legal bushels
 * @source               conservation of dry matter; University of Nebraska-Lincoln, CropWatch, 14 September 2017
 */
export function overdryingBushels(
  dryMatterKg: Estimate,
  baseWb: number,
  end: Estimate,
  legalBushelKg: number,
): Estimate {
  if (end.value === null) return withheld(end.why ?? 'The moisture at the end is not known.');
  if (dryMatterKg.value === null) return withheld(dryMatterKg.why ?? 'The dry matter is not known.');
  const dry = dryMatterKg.value;
  const lost = (endWb: number) => overdryingWeight(dry, baseWb, endWb) / legalBushelKg;
  const [low, high] = end.interval ?? [end.value, end.value];
  const value = lost(end.value);
  // Dry matter and moisture err apart: their half-widths join as squares. Nothing lost is nothing, however much grain there is.
  const [fewer, more] = dryMatterKg.interval ?? [dry, dry];
  const ownLow = value * (1 - fewer / dry);
  const ownHigh = value * (more / dry - 1);
  return estimate(
    value,
    Math.max(0, value - Math.hypot(value - lost(high), ownLow)),
    value + Math.hypot(lost(low) - value, ownHigh),
  );
}
