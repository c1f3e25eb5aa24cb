import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { spanned } from './spanned.ts';
import type { TriedEnd } from './way-weights.ts';
import type { StrategyOutcome } from './what-if-types.ts';

const HOUR_MS = 3_600_000;

/**
 * What a strategy comes to in the bin as fitted, with the range of its cost over all that the bin may be.
 *
 * @param specs  the bin as fitted, which gives the outcome, then each that it may be, see `mayBes`
 */
export function doubtedOutcome(
  specs: readonly RunSpec[],
  strategy: Strategy,
): StrategyOutcome & { tried: readonly TriedEnd[] } {
  const outcomes = specs.map((spec) => runSeason(spec, strategy).outcome);
  const [central] = outcomes;
  return {
    ...told(specs[0], strategy, central),
    cost: spanned(outcomes.map(({ cost }) => cost)),
    reaching: outcomes.filter(({ reachedTarget }) => reachedTarget).length,
    runs: outcomes.length,
    tried: outcomes.map(({ cost, reachedTarget, endMoistureWb }) => ({ cost, reached: reachedTarget, endMoistureWb })),
  };
}

/** A run under its strategy's name. */
export function told({ hours }: RunSpec, { id, title }: Strategy, outcome: Outcome) {
  const { reachedHour } = outcome;
  return {
    id,
    title,
    outcome,
    reachedMs: Number.isNaN(reachedHour) ? null : hours.startMs + reachedHour * HOUR_MS,
  };
}
