import { type Estimate, withheld } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import { loadSettlement } from '../../money/load-settlement.ts';
import { priceSchedules } from '../../season/price-schedules.ts';
import type { GrainPrice, Season } from '../../season/season.ts';
import type { BinReview } from '../types.ts';

/** What a bin's grain would have brought as it went in and as it came out, by the stated price and deductions; money. */
export interface MoistureValue {
  /** sold as it went in */
  asIn: Estimate;
  /** sold as it came out, its weight less (or more) the water */
  asOut: Estimate;
  /** out less in: gained where above zero */
  gained: Estimate;
}

/** @returns every number withheld with its reason where price, moistures or bushels are not known */
export function moistureValue(review: BinReview, season: Season): MoistureValue {
  const none = (why: string): MoistureValue => ({ asIn: withheld(why), asOut: withheld(why), gained: withheld(why) });
  const { bin, moisture, grain } = review;
  const price = season.prices[bin.grain.crop];
  const traded = cropOf(bin.grain.crop).name.toLowerCase();
  const full = fullBushels(review);
  const { start, end, pointsRemoved } = moisture;
  if (price === undefined) return none(`No price of ${traded} is stated.`);
  if (price.baseMoistureWb === null && (price.schedules ?? []).length === 0)
    return none(`No base moisture or deduction of ${traded} is stated.`);
  if (grain.bushels === null) return none(grain.why ?? `The bushels in ${bin.name} are not known.`);
  if (start.value === null || end.value === null || pointsRemoved.value === null || pointsRemoved.interval === null)
    return none(moisture.why ?? pointsRemoved.why ?? 'The moistures are not known.');
  if (full?.value == null) return none(grain.why ?? `The dry matter in ${bin.name} is not known.`);
  const count = full.value;
  // The points removed are the difference; where grain was drawn in steps they are not start less end.
  const points = pointsRemoved.value / 100;
  const at = (inWb: number, removed: number) => {
    const wet = worth(price, count, inWb);
    const dry = worth(price, (count * (1 - inWb)) / (1 - inWb + removed), inWb - removed);
    return wet === null || dry === null ? null : { wet, dry, gained: dry - wet };
  };
  const middle = at(start.value, points);
  if (middle === null) return none('A stated schedule does not take grain that wet.');
  const ends = [
    ...pointsRemoved.interval.map((removed) => at(Number(start.value), removed / 100)),
    // What is off at the start and at the end alike moves both sales.
    ...(start.interval ?? [start.value, start.value]).map((wb) => at(wb, points)),
  ];
  if (ends.some((one) => one === null))
    return none('A stated schedule does not take grain as wet as this may have been.');
  const told = ends.filter((one) => one !== null);
  const joined = (key: 'wet' | 'dry' | 'gained', pairs: readonly [number, number][]): Estimate => {
    const value = middle[key];
    const down = Math.hypot(...pairs.map(([a, b]) => Math.max(0, value - Math.min(told[a][key], told[b][key]))));
    const up = Math.hypot(...pairs.map(([a, b]) => Math.max(0, Math.max(told[a][key], told[b][key]) - value)));
    const rel = full.interval === null ? [0, 0] : full.interval.map((one) => Math.abs(one / count - 1));
    const size = Math.abs(value);
    return {
      value,
      interval: [value - Math.hypot(down, size * rel[0]), value + Math.hypot(up, size * rel[1])],
      why: null,
    };
  };
  return {
    asIn: joined('wet', [[2, 3]]),
    asOut: joined('dry', [
      [0, 1],
      [2, 3],
    ]),
    gained: joined('gained', [
      [0, 1],
      [2, 3],
    ]),
  };
}

/**
 * Bushels when the bin was full, at the moisture that it then had: over the scale grain can have gone in wetter, and dried while it was
 * filled. Null where dry matter or moisture is not known.
 */
export function fullBushels({ bin, grain, moisture }: Pick<BinReview, 'bin' | 'grain' | 'moisture'>): Estimate | null {
  const { dryMatterKg, dryMatterKgInterval, bushels, bushelsInterval, from } = grain;
  const startWb = moisture.start.value;
  if (dryMatterKg === null || bushels === null || startWb === null) return null;
  const value = dryMatterKg / (1 - startWb) / cropOf(bin.grain.crop).legalBushelKg;
  // By the tickets' moisture the dry matter has an error of its own; else that of the start, which moves the sale as it is.
  const [ends, middle] = from === 'tickets' ? [dryMatterKgInterval, dryMatterKg] : [bushelsInterval, bushels];
  const [low, high] = (ends ?? [middle, middle]).map((end) => (value * end) / middle);
  return { value, interval: [low, high], why: null };
}

/** What a lot brings; null where a schedule does not take it. */
function worth(price: GrainPrice, bushels: number, moistureWb: number): number | null {
  const schedules = priceSchedules(price).map(({ schedule }) => schedule);
  return loadSettlement(bushels, moistureWb, price.pricePerBushel, schedules)?.net ?? null;
}
