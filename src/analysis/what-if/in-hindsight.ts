import { withheld } from '../../base/estimate.ts';
import { hindsightSchedule } from '../../simulation/hindsight/hindsight-schedule.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { told } from './doubted-outcome.ts';
import { NO_PRICE, type StrategyOutcome } from './what-if-types.ts';

/** A bin to be cooled has to be cold by the day on which it was as run; left alone, every bin is some day in winter. */
export function inHindsight(
  spec: RunSpec,
  known: readonly Strategy[],
  logged: Float64Array,
  asLogged: Outcome,
): { run: StrategyOutcome; ways: Uint8Array } | null {
  const byHour = spec.goal === 'cool' && asLogged.reachedTarget ? asLogged.reachedHour : spec.endHour;
  const schedule = hindsightSchedule(spec, known, { logged, byHour });
  if (schedule === null) return null;
  const { outcome } = runSeason(spec, schedule);
  const cost = Number.isNaN(outcome.cost) ? withheld(NO_PRICE) : { value: outcome.cost, interval: null, why: null };
  const run = { ...told(spec, schedule, outcome), cost, reaching: outcome.reachedTarget ? 1 : 0, runs: 1 };
  return { run, ways: schedule.ways };
}
