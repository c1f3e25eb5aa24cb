import type { WayWeight } from '../analysis/what-if/way-weights.ts';
import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import type { Estimate } from '../base/estimate.ts';
import { savingAt } from './strategy-saving.ts';
import type { Played } from './strategy-words.ts';

/** Told from this part of the weight on: half a percent is what meters part by. */
export const LOST_TOLD = 0.005;

/** What a way of the bin gives away; null where nobody can tell. */
export const weightOf = ({ whatIf: { weights } }: Played, id: string | undefined): WayWeight | null =>
  weights?.ways.find((one) => one.id === id) ?? null;

/** What the rule named dries away beyond what the season as run did, money; below 0 where it is less, 0 where nobody can tell. */
export function moreDriedAway(one: Played): number {
  const rule = weightOf(one, one.pick?.id)?.givenAway.value ?? null;
  const asRun = weightOf(one, one.whatIf.logged?.id)?.givenAway.value ?? null;
  return rule === null || asRun === null ? 0 : rule - asRun;
}

/** Over-drying is told beside a saving from this part of it on. */
const WEIGHT_TOLD = 0.1;

/** Whether what the rule named dries away beyond the season as run, or less, tells beside its saving. */
export function weightTells(one: Played): boolean {
  const more = Math.abs(moreDriedAway(one));
  return more > 0 && more >= WEIGHT_TOLD * Math.abs(Number(one.saving.value));
}

/** What the rule named would have saved with over-drying counted on both sides, money; null where that is not told apart from its saving. */
export function savingCounted(one: Played): Estimate | null {
  const of = weightOf(one, one.pick?.id);
  if (of === null || one.saving.value === null || !weightTells(one)) return null;
  return savingAt(one, of.beyondLogged);
}

/** The other rule that comes to less with the weight counted; null where that is the one named, or nobody can tell. */
export function lessTogether({ whatIf, pick }: Played): (StrategyOutcome & { weight: WayWeight }) | null {
  const { weights, strategies } = whatIf;
  const other = strategies.find(({ id }) => id === weights?.pick);
  const of = weights?.ways.find(({ id }) => id === other?.id);
  const named = weights?.ways.find(({ id }) => id === pick?.id)?.together.value ?? null;
  if (other === undefined || of === undefined || other.id === pick?.id) return null;
  // The least above the cheapest over all runs may be the dearer one in the bin as fitted: no sentence to tell in one number each.
  if (named === null || !(Number(of.together.value) < named)) return null;
  return { ...other, weight: of };
}
