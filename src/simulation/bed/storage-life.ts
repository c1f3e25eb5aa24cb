import { cornDryMatterLoss } from '../../grain/corn-loss.ts';
import { cornReferenceHours } from '../../grain/corn-storage.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import { STORAGE_RULES } from '../../grain/storage-rules.ts';

/** How a bed's grain ages: the crop's storage rule, summed over a season's hours. */
export interface StorageLife {
  /** of the rule, for the page */
  criterion: string;
  sourceKeys: readonly string[];
  /** share of the allowable time that an hour uses. The kernel, no checks: outside the rule's range its nearest end speaks */
  sharePerHour(tempC: number, moistureDb: number): number;
  /** dry matter lost when so much of the time is used, fraction; null where the rule counts germination, not dry matter */
  lossOfShare: ((share: number) => number) | null;
}

/** The storage life of a crop by its default rule; null where none is known (rice). */
export function storageLifeOf(crop: string): StorageLife | null {
  const rule = STORAGE_RULES.find((one) => one.crop === crop);
  if (rule === undefined) return null;
  const [coldest, hottest] = rule.tempRangeC;
  const [driest, wettest] = rule.moistureRangeWb;
  const reference = rule.lossAtEnd === null ? Number.NaN : cornReferenceHours(rule.lossAtEnd);
  return {
    criterion: rule.criterion,
    sourceKeys: rule.sourceKeys,
    sharePerHour: (tempC, moistureDb) =>
      1 / rule.hours(clamp(tempC, coldest, hottest), clamp(wetFromDry(moistureDb), driest, wettest)),
    // Rules that move corn's time lose by corn's curve: a slow rise, then a faster one.
    lossOfShare: rule.lossAtEnd === null ? null : (share) => cornDryMatterLoss(share * reference),
  };
}

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));
