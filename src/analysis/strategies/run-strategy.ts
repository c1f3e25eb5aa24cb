import { hindsightSchedule, IN_HINDSIGHT } from '../../simulation/hindsight/hindsight-schedule.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { scheduled } from '../../simulation/strategies/scheduled.ts';
import { STRATEGIES, strategyOf } from '../../simulation/strategies/strategies.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';

export { IN_HINDSIGHT };

export const AS_LOGGED = 'as-logged';

/** The ids that a sweep can run. */
export const SWEPT: readonly string[] = [...STRATEGIES.map((one) => one.id), AS_LOGGED, IN_HINDSIGHT];

/** What a strategy comes to, or a sentence why it cannot be told. */
export type StrategyRun = { outcome: Outcome; why: null } | { outcome: null; why: string };

/**
 * Run a strategy through a bin's season. All rest once the target is reached (`untilReached`); the search in hindsight starts
 * from all other strategies' schedules, so that none of them ends cheaper.
 *
 * @param logged  share of each hour in which the fan ran by its log, [hours of the run]; null where there is no log for it
 */
export function runStrategy(spec: RunSpec, id: string, logged: Float64Array | null): StrategyRun {
  if (id === AS_LOGGED) {
    if (logged === null) return { outcome: null, why: 'The fan’s log tells of this season only.' };
    return { outcome: runSeason(spec, scheduled(id, 'As logged', logged)).outcome, why: null };
  }
  if (id === IN_HINDSIGHT) return runBest(spec);
  return { outcome: runSeason(spec, untilReached(strategyOf(id), spec.goal)).outcome, why: null };
}

function runBest(spec: RunSpec): StrategyRun {
  const best = hindsightSchedule(spec, STRATEGIES);
  if (best === null) return { outcome: null, why: 'Every schedule tried uses up more storage life than there is.' };
  return { outcome: runSeason(spec, best).outcome, why: null };
}
