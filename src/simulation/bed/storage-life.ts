import { cornDryMatterLoss } from '../../grain/corn-loss.ts';
import { cornReferenceHours } from '../../grain/corn-storage.ts';
import { STORAGE_RULES, type StorageRule } from '../../grain/storage-rules.ts';

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

const STEP_K = 0.5;
const STEP_WB = 0.0025;
/** What corn's curve speaks of: grain that has lost more is no grain. */
export const MOST_LOSS = 0.05;

// A rule costs more than all else of a step, and a table of one takes some milliseconds: made once for a rule.
const MADE = new Map<string, StorageLife>();

/** The storage life of a crop by its default rule; null where none is known (rice). */
export function storageLifeOf(crop: string): StorageLife | null {
  const rule = STORAGE_RULES.find((one) => one.crop === crop);
  return rule === undefined ? null : storageLifeBy(rule);
}

/** The storage life by a rule. */
export function storageLifeBy(rule: StorageRule): StorageLife {
  const key = `${rule.crop}: ${rule.name}`;
  const made = MADE.get(key) ?? lifeOf(rule);
  MADE.set(key, made);
  return made;
}

function lifeOf(rule: StorageRule): StorageLife {
  const { criterion, sourceKeys, lossAtEnd } = rule;
  return {
    criterion,
    sourceKeys,
    sharePerHour: sharesOf(rule),
    lossOfShare: lossAtEnd === null ? null : lossOf(lossAtEnd),
  };
}

/** Rules that move corn's time lose by corn's curve: a slow rise, then a faster one, up to its end. */
function lossOf(lossAtEnd: number): (share: number) => number {
  const reference = cornReferenceHours(lossAtEnd);
  const end = cornReferenceHours(MOST_LOSS);
  return (share) => cornDryMatterLoss(Math.min(end, share * reference));
}

/**
 * The rule's shares straight between points: within 0.6 % of a rule that nobody knows to a tenth. No closure within: `tsx` names
 * each as it is made, which costs twenty look-ups.
 */
function sharesOf({ tempRangeC, moistureRangeWb, hours }: StorageRule): StorageLife['sharePerHour'] {
  const [coldest, hottest] = tempRangeC;
  const [driest, wettest] = moistureRangeWb;
  const rows = Math.round((hottest - coldest) / STEP_K);
  const columns = Math.round((wettest - driest) / STEP_WB);
  const at = (low: number, high: number, i: number, of: number) => low + ((high - low) * i) / of;
  // [rows + 1 x columns + 1], row-major
  const wide = columns + 1;
  const shares = Float64Array.from(
    { length: (rows + 1) * wide },
    (_, i) => 1 / hours(at(coldest, hottest, Math.floor(i / wide), rows), at(driest, wettest, i % wide, columns)),
  );
  return (tempC, moistureDb) => {
    const t = clamp((tempC - coldest) / STEP_K, rows);
    const m = clamp((moistureDb / (1 + moistureDb) - driest) / STEP_WB, columns);
    const row = Math.min(t | 0, rows - 1);
    const column = Math.min(m | 0, columns - 1);
    const i = row * wide + column;
    const low = shares[i] + (m - column) * (shares[i + 1] - shares[i]);
    const high = shares[i + wide] + (m - column) * (shares[i + wide + 1] - shares[i + wide]);
    return low + (t - row) * (high - low);
  };
}

const clamp = (x: number, high: number): number => Math.min(high, Math.max(0, x));
