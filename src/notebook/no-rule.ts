import type { BinReview } from '../analysis/types.ts';
import { type BinWhatIf, NO_PRICE } from '../analysis/what-if/what-if-types.ts';
import { counted } from './words.ts';

/** A bin with its what-if. */
export type Run = Readonly<{ review: BinReview; whatIf: BinWhatIf }>;

/** Why no rule is named of a bin that has runs: it has no target, a cost is not known, or none reaches. */
export type NoRule = Readonly<{
  kind: 'held' | 'unpriced' | 'none reaches';
  /** a sentence, for a missing number */
  why: string;
}>;

/** A held bin has no target. */
export const HELD = 'To be held: there is nothing to reach.';

export const isHeld = ({ review }: Pick<Run, 'review'>): boolean => review.bin.goal === 'hold';

/** @returns  null where a rule is named, or there are no runs */
export function noRule({ review, whatIf }: Run): NoRule | null {
  if (whatIf.why !== null || whatIf.pick !== null) return null;
  if (isHeld({ review })) return { kind: 'held', why: HELD };
  const there = whatIf.strategies.filter(({ outcome }) => outcome.reachedTarget);
  if (there.length === 0) return { kind: 'none reaches', why: 'No strategy reaches the target.' };
  return { kind: 'unpriced', why: there.find(({ cost }) => cost.value === null)?.cost.why ?? NO_PRICE };
}

/** Why a number of the rule named is missing; null where a rule is named. */
export function missingRule(one: Run): string | null {
  return one.whatIf.why ?? noRule(one)?.why ?? null;
}

/** `7 of 8 strategies reach the target`. */
export function reachingSaid({ strategies }: BinWhatIf): string {
  const count = strategies.filter(({ outcome }) => outcome.reachedTarget).length;
  return `${count} of ${counted(strategies.length, 'strategy', 'strategies')} ${count === 1 ? 'reaches' : 'reach'} the target`;
}
