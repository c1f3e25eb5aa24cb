import { hindsightSchedule, IN_HINDSIGHT } from '../../simulation/hindsight/hindsight-schedule.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { AS_LOGGED, asLogged } from '../../simulation/strategies/as-logged.ts';
import { type ChosenWay, wayOf } from '../../simulation/strategies/chosen-way.ts';
import { runsOn } from '../../simulation/strategies/runs-on.ts';
import { STRATEGIES } from '../../simulation/strategies/strategies.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';

export { AS_LOGGED, IN_HINDSIGHT };

/** The ids that a sweep can run; rules of the kit with parameters of a user's choice too, see `wayName`. */
export const SWEPT: readonly string[] = [...STRATEGIES.map((one) => one.id), AS_LOGGED, IN_HINDSIGHT];

/**
 * The search in a sweep, many times over: one search forward, then changes until so many hours have been played, about 1 µs each
 * with 20 layers. Seasons of four months end before that; at 2 million hours three of four made bins came to the same schedule.
 */
const SEARCH = { widths: [40], mostHours: 4e6 };

/** What a strategy comes to, or a sentence why it cannot be told. */
export type StrategyRun = { outcome: Outcome; why: null } | { outcome: null; why: string };

/** What the fan's log gives a run. */
export interface FromLog {
  /** share of each hour in which the fan ran, [hours of the run]; null where there is no log for it */
  logged: Float64Array | null;
  /** names of ways with chosen parameters, from whose schedules the search in hindsight starts too; left out: none */
  ways?: readonly string[];
}

/**
 * Run a strategy through a bin's season. All rest once the target is reached (`untilReached`); the search in hindsight starts
 * from all other strategies' schedules, so that none of them ends cheaper.
 *
 * @param way  `as-logged`, `best-in-hindsight`, or a rule of the kit: its id, a name with parameters, or the two apart
 * @throws     RangeError with all that is wrong with a way
 */
export function runStrategy(spec: RunSpec, way: string | ChosenWay, fromLog: FromLog): StrategyRun {
  const { logged } = fromLog;
  if (way === AS_LOGGED) {
    if (logged === null) return { outcome: null, why: 'The fan’s log tells of this season only.' };
    return { outcome: runSeason(spec, asLogged(spec, logged)).outcome, why: null };
  }
  if (way === IN_HINDSIGHT) return runBest(spec, fromLog);
  const strategy = wayOf(way);
  if (!runsOn(strategy, spec)) return { outcome: null, why: 'The bin has no heater.' };
  return { outcome: runSeason(spec, untilReached(strategy, spec.goal)).outcome, why: null };
}

function runBest(spec: RunSpec, { logged, ways = [] }: FromLog): StrategyRun {
  const best = hindsightSchedule(
    spec,
    [...STRATEGIES, ...ways.map(wayOf)].filter((one) => runsOn(one, spec)),
    { logged: logged ?? undefined, search: SEARCH },
  );
  if (best === null) return { outcome: null, why: 'Every schedule tried uses up more storage time than there is.' };
  return { outcome: runSeason(spec, best).outcome, why: null };
}
