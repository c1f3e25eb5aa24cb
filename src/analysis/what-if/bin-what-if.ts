import { estimate, withheld } from '../../base/estimate.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { doubtedSpec } from '../../simulation/doubt/doubted-spec.ts';
import { DOUBTS } from '../../simulation/doubt/doubts.ts';
import { surelyCheapest } from '../../simulation/doubt/surely-cheapest.ts';
import { hindsightSchedule } from '../../simulation/hindsight/hindsight-schedule.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import { hasHeater, type RunSpec } from '../../simulation/run/run-spec.ts';
import { scheduled } from '../../simulation/strategies/scheduled.ts';
import { STRATEGIES } from '../../simulation/strategies/strategies.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { binModel } from '../model/bin-model.ts';
import type { BinModel } from '../model/model-types.ts';
import { runSpecOf } from '../model/run-spec-of.ts';
import { AS_LOGGED } from '../strategies/run-strategy.ts';
import type { BinReview } from '../types.ts';
import { type BinWhatIf, NO_PRICE, type StrategyOutcome } from './what-if-types.ts';

const HOUR_MS = 3_600_000;

/**
 * Fit a bin's bed to its log and, where it can be trusted, run the season again as logged, by every strategy, and by the
 * best schedule found in hindsight.
 */
export function binWhatIf(loaded: LoadedSeason, review: BinReview, series: readonly SensorSeries[]): BinWhatIf {
  const binId = review.bin.id;
  const model = binModel(loaded, review, series);
  if (!model.trusted || model.fitted === null) return withoutRuns(binId, model, model.why);
  const found = runSpecOf(loaded, review, model.fitted);
  if (found.spec === null) return withoutRuns(binId, model, found.why);
  const { spec, logged } = found;
  const known = STRATEGIES.filter((one) => one.heater === undefined || hasHeater(spec));
  const specs = DOUBTS.map((doubt) => doubtedSpec(spec, doubt));
  const asLogged = outcomeOf(specs, scheduled(AS_LOGGED, 'As logged', logged));
  const strategies = known.map((one) => outcomeOf(specs, untilReached(one, spec.goal)));
  const pick = surelyCheapest(strategies.map((one) => one.tried));
  return {
    binId,
    model,
    logged: asLogged,
    strategies,
    hindsight: inHindsight(spec, known, logged, asLogged.outcome),
    pick: pick === null ? null : known[pick.index].id,
    sure: pick?.sure ?? false,
    why: null,
  };
}

function withoutRuns(binId: string, model: BinModel, why: string): BinWhatIf {
  return { binId, model, logged: null, strategies: [], hindsight: null, pick: null, sure: false, why };
}

/** The bin as fitted comes first among the runs and gives the outcome. */
function outcomeOf(specs: readonly RunSpec[], strategy: Strategy) {
  const outcomes = specs.map((spec) => runSeason(spec, strategy).outcome);
  const [central] = outcomes;
  const costs = outcomes.map(({ cost }) => cost);
  return {
    ...told(specs[0], strategy, central),
    cost: Number.isNaN(central.cost)
      ? withheld(NO_PRICE)
      : estimate(central.cost, Math.min(...costs), Math.max(...costs)),
    reaching: outcomes.filter(({ reachedTarget }) => reachedTarget).length,
    runs: outcomes.length,
    tried: outcomes.map(({ cost, reachedTarget }) => ({ cost, reached: reachedTarget })),
  };
}

function told({ hours }: RunSpec, { id, title }: Strategy, outcome: Outcome) {
  const { reachedHour } = outcome;
  return {
    id,
    title,
    outcome,
    reachedMs: Number.isNaN(reachedHour) ? null : hours.startMs + reachedHour * HOUR_MS,
  };
}

/** A bin to be cooled has to be cold by the day on which it was as run; left alone, every bin is some day in winter. */
function inHindsight(
  spec: RunSpec,
  known: readonly Strategy[],
  logged: Float64Array,
  asLogged: Outcome,
): StrategyOutcome | null {
  const byHour = spec.goal === 'cool' && asLogged.reachedTarget ? asLogged.reachedHour : spec.endHour;
  const schedule = hindsightSchedule(spec, known, { logged, byHour });
  if (schedule === null) return null;
  const { outcome } = runSeason(spec, schedule);
  const cost = Number.isNaN(outcome.cost) ? withheld(NO_PRICE) : { value: outcome.cost, interval: null, why: null };
  return { ...told(spec, schedule, outcome), cost, reaching: outcome.reachedTarget ? 1 : 0, runs: 1 };
}
