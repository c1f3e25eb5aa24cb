import { withheld } from '../../base/estimate.ts';
import { hindsightSchedule } from '../../simulation/hindsight/hindsight-schedule.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { told } from './doubted-outcome.ts';
import { NO_PRICE, type StrategyOutcome } from './what-if-types.ts';

/** The best schedule in hindsight of a bin; one to be cooled is held against the rule named and the log, see `heldAgainst`. */
export function inHindsight(
  spec: RunSpec,
  known: readonly Strategy[],
  logged: Float64Array,
  named: Strategy | null,
): { run: StrategyOutcome; ways: Uint8Array } | null {
  // A bin to be held has nothing to reach: its cheapest schedule is none.
  if (spec.goal === 'hold') return null;
  const schedule = hindsightSchedule(spec, known, { logged, named: named ?? undefined });
  if (schedule === null) return null;
  const { outcome } = runSeason(spec, schedule);
  const cost = Number.isNaN(outcome.cost) ? withheld(NO_PRICE) : { value: outcome.cost, interval: null, why: null };
  const run = { ...told(spec, schedule, outcome), cost, reaching: outcome.reachedTarget ? 1 : 0, runs: 1 };
  return { run, ways: schedule.ways };
}
