import { reachedDay } from '../analysis/strategies/reached-day.ts';
import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import type { Units } from '../report/units.ts';

/** So much more of the storage time used is told: less is within what its rules are good for. Our choice. */
const LIFE_TOLD = 0.05;

/**
 * What a rule takes of the grain's storage time, where that is clearly more than as run, or all there is: the cheapest to reach a
 * target may age the grain most, and no rule's cost tells. Nothing where no rule tells the storage time.
 */
export function ruleAgesSaid({ outcome }: StrategyOutcome, logged: StrategyOutcome, units: Units): string {
  const { lifeUsed } = outcome;
  const asRun = logged.outcome.lifeUsed;
  const gone = lifeUsed >= 1;
  if (!gone && !(lifeUsed - asRun > LIFE_TOLD)) return '';
  const beside = Number.isFinite(asRun) ? `, ${units.say('share', asRun)} as run` : '';
  return ` Under this rule the worst layer would have used ${units.say('share', lifeUsed)} of the storage time by the model${beside}${gone ? ': more than there is' : ''}.`;
}

/**
 * What the best schedule in hindsight would have cost and when the bin had been there, and what it takes of the grain where that
 * is clearly more. A bin to be cooled has to be cold no later than it was as run, see `heldAgainst`: it may then cost more than a rule that
 * came there later.
 */
export function hindsightSaid(hindsight: StrategyOutcome | null, pick: StrategyOutcome, units: Units): string {
  if (hindsight === null || hindsight.reachedMs === null || !hindsight.outcome.reachedTarget) return '';
  if (hindsight.cost.value === null) return '';
  const cost = units.say('money', hindsight.cost.value);
  const by = `by ${units.date(reachedDay(hindsight.reachedMs))}`;
  const earlier = pick.reachedMs !== null && hindsight.reachedMs < pick.reachedMs;
  const said =
    earlier && Number(hindsight.cost.value) > Number(pick.cost.value)
      ? `To be there as early as it was, ${by}, would have taken ${cost} with the weather known ahead`
      : `With the weather known ahead ${cost} would have done, ${by}`;
  return ` ${said}${agedSaid(hindsight, pick, units)}.`;
}

/** Nothing where no rule tells the storage time. */
function agedSaid({ outcome }: StrategyOutcome, pick: StrategyOutcome, units: Units): string {
  const { lifeUsed } = outcome;
  if (!(lifeUsed - pick.outcome.lifeUsed > LIFE_TOLD)) return '';
  return `, with ${units.say('share', lifeUsed)} of the storage time used in place of ${units.say('share', pick.outcome.lifeUsed)}`;
}
