import { strategyOf } from '../../simulation/strategies/strategies.ts';

const RULES = 2;

/**
 * The rules that are told in other years: the humidity rule, whose hours hang on the weather most, and the one that the kit would
 * take. What a heater adds is not the weather's.
 *
 * @param pick  id of the rule that the kit would take; null: none
 * @returns     ids
 */
export function rulesOfYears(pick: string | null): string[] {
  const taken = pick === null || strategyOf(pick).heater !== undefined ? [] : [pick];
  return [...new Set(['humidity-limit', ...taken, 'always-on'])].slice(0, RULES);
}
