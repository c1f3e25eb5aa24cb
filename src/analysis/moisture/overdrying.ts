import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { overdryingWeight } from '../../money/overdrying-weight.ts';

/**
 * Weight lost for sale because the grain ended drier than the market's base: the bushels that its dry matter would make
 * at the base moisture less those that it makes at the end. None where it ended wetter.
 *
 * @param dryMatterKg    of the bin
 * @param baseWb         moisture of the market base, wet basis, fraction
 * @param end            moisture at the end, wet basis, fraction, with its 90 % interval
 * @param legalBushelKg  weight of a legal bushel
 * @returns              legal bushels
 * @source               conservation of dry matter; University of Nebraska-Lincoln, CropWatch, 14 September 2017
 */
export function overdryingBushels(dryMatterKg: number, baseWb: number, end: Estimate, legalBushelKg: number): Estimate {
  if (end.value === null) return withheld(end.why ?? 'The moisture at the end is not known.');
  const lost = (endWb: number) => overdryingWeight(dryMatterKg, baseWb, endWb) / legalBushelKg;
  const [low, high] = end.interval ?? [end.value, end.value];
  return estimate(lost(end.value), lost(high), lost(low));
}
