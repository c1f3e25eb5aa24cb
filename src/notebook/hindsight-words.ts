import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import type { Units } from '../report/units.ts';

/** The search asks a bin to be cold as early as it was as run: it may then cost more than a rule that came there later. */
export function hindsightSaid(hindsight: StrategyOutcome | null, pick: StrategyOutcome, units: Units): string {
  if (hindsight === null || !hindsight.outcome.reachedTarget) return '';
  const cost = units.say('money', hindsight.cost.value);
  const later = hindsight.reachedMs !== null && pick.reachedMs !== null && hindsight.reachedMs < pick.reachedMs;
  return later && Number(hindsight.cost.value) > Number(pick.cost.value)
    ? ` To be there as early as it was, by ${units.date(Number(hindsight.reachedMs))}, would have taken ${cost} with the weather known ahead.`
    : ` With the weather known ahead ${cost} would have done.`;
}
