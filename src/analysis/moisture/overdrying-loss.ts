import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Bin, Season } from '../../season/season.ts';
import type { BinGrainAmount } from '../types.ts';
import type { MoistureMoment } from './moisture-moment.ts';
import { overdryingBushels } from './overdrying.ts';
import { baseMoisture } from './wanted-moisture.ts';

/**
 * Over-drying loss of a bin in legal bushels and in money.
 *
 * @param belowWb  the moisture that it is held against; left out: the market's base, or else the bin's target
 */
export function overdryingLoss(
  bin: Bin,
  season: Season,
  grain: Pick<BinGrainAmount, 'dryMatterKg' | 'dryMatterKgInterval' | 'why'>,
  end: MoistureMoment,
  belowWb?: number,
): { bushels: Estimate; money: Estimate } {
  const both = (why: string) => ({ bushels: withheld(why), money: withheld(why) });
  const price = season.prices[bin.grain.crop];
  const baseWb = belowWb ?? baseMoisture(season, bin);
  if (baseWb === null) {
    return both(
      `Neither a base moisture for ${cropOf(bin.grain.crop).name.toLowerCase()} nor a target moisture of ${bin.name} is stated.`,
    );
  }
  if (end.mean.value === null) return both(end.why ?? 'The moisture at the end is not known.');
  if (grain.dryMatterKg === null) return both(grain.why ?? 'The dry matter is not known.');
  const dryMatterKg: Estimate = { value: grain.dryMatterKg, interval: grain.dryMatterKgInterval ?? null, why: null };
  const moisture: Estimate = { value: end.mean.value, interval: end.mean.interval ?? null, why: null };
  const bushels = overdryingBushels(dryMatterKg, baseWb, moisture, cropOf(bin.grain.crop).legalBushelKg);
  if (price === undefined) {
    return {
      bushels,
      money: withheld(
        `No price of ${cropOf(bin.grain.crop).name.toLowerCase()} is stated, so the loss has no value in money.`,
      ),
    };
  }
  const [low, high] = bushels.interval!;
  const each = price.pricePerBushel;
  return { bushels, money: estimate(bushels.value! * each, low * each, high * each) };
}
