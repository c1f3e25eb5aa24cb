import { binModel } from '../../analysis/model/bin-model.ts';
import type { BinModel } from '../../analysis/model/model-types.ts';
import { reachedDay } from '../../analysis/strategies/reached-day.ts';
import type { StrategyOutcome } from '../../analysis/what-if/what-if-types.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import { asLogged } from '../../simulation/strategies/as-logged.ts';
import type { ChosenWay } from '../../simulation/strategies/chosen-way.ts';
import { runsOn } from '../../simulation/strategies/runs-on.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';
import { amount, type ToldNumber } from './amount.ts';
import type { NotebookBin } from './bin-numbers.ts';
import { bedOf, runOn } from './kept-runs.ts';
import type { OwnStrategy } from './own-strategy.ts';
import { isOwn, readWays } from './read-ways.ts';
import type { SheetInput } from './sheet-types.ts';

/**
 * A way of one's own; a rule of the kit by its id, or with parameters of one's choice, `{ id: 'humidity-limit', parameters: { rh: '65 %' } }`
 * (a bare number is a fraction, degC, K or h); `as-logged` is how the fan was run.
 */
export type Way = OwnStrategy | ChosenWay | string;

/** What a way came to in the bin's season, a row for a table or a figure. Numbers are by the model. */
export interface TriedWay {
  way: string;
  /** its range: lowest and highest of the runs in the bin as fitted and in those that go with the log as well, see `mayBes` */
  cost: ToldNumber;
  fanHours: ToldNumber;
  energy: ToldNumber;
  moistureOut: ToldNumber;
  temperatureOut: ToldNumber;
  /** when the target was reached for good */
  reached: Date | { value: null; why: string };
  /** in how many of those runs: `10 of 12` */
  reaching: string;
}

export interface TriedBin {
  /** a row for each way, in the given order; none where the model is not trusted */
  ways: readonly TriedWay[];
  /** all that a run came to, by the way's id, in SI and fractions */
  outcomes: Readonly<Record<string, Outcome>>;
  /** why there are none; null where there are */
  why: string | null;
  model: BinModel;
}

/** Where fitted beds are kept, so that a notebook drawn anew need not fit them anew. */
export interface BedStore {
  get(binId: string): BinModel | undefined;
  keep(binId: string, model: BinModel): void;
}

/**
 * Run a bin's season anew by other ways, on its bed as fitted to its own log.
 *
 * @throws RangeError with all ways that cannot be: an id or a parameter that the kit does not know, with those that it does, one out of its range, a way tried twice
 */
export function tryWays(input: SheetInput, { id: binId, review }: NotebookBin, ways: readonly Way[]): TriedBin {
  const { loaded } = input;
  const strategies = readWays(ways, input.units);
  const model = modelOf(input, binId, review);
  const none = (why: string): TriedBin => ({ ways: [], outcomes: {}, why, model });
  if (review.failure !== null) return none(review.failure);
  if (!model.trusted || model.fitted === null) return none(model.why);
  const found = bedOf(loaded, review, model);
  if (found.spec === null) return none(found.why);
  const { spec, logged } = found;
  const runs = strategies.map((one, i) => {
    const run = (strategy: Strategy) => runOn(loaded, review, model, strategy, isOwn(ways[i]));
    if (typeof one === 'string') return run(asLogged(spec, logged));
    if (!runsOn(one, spec)) throw new RangeError(`${one.id} heats the air, but ${review.bin.name} has no heater`);
    return run(untilReached(one, spec.goal));
  });
  return {
    ways: runs.map((run) => wayOf(run, spec)),
    outcomes: Object.fromEntries(runs.map(({ id, outcome }) => [id, outcome])),
    why: null,
    model,
  };
}

function modelOf({ review: season, beds, loaded }: SheetInput, binId: string, review: NotebookBin['review']): BinModel {
  const made = season.whatIf?.find((one) => one.binId === binId)?.model ?? beds?.get(binId);
  if (made !== undefined) return made;
  const fresh = binModel(loaded, review);
  beds?.keep(binId, fresh);
  return fresh;
}

function wayOf({ title, outcome, cost, reachedMs, reaching, runs }: StrategyOutcome, { goal }: RunSpec): TriedWay {
  const byModel = (of: Parameters<typeof amount>[0], value: number): ToldNumber => ({
    ...amount(of, value),
    known: 'by the model',
  });
  const why = goal === 'hold' ? 'A bin that is held has no target to reach.' : 'The target is not reached for good.';
  return {
    way: title,
    cost: { ...amount('money', cost), known: 'by the model' },
    fanHours: byModel('hours', outcome.fanHours),
    energy: byModel('energy', outcome.energyKwh),
    moistureOut: byModel('moisture', outcome.endMoistureWb),
    temperatureOut: byModel('temperature', outcome.endTempC),
    reached: reachedMs === null ? { value: null, why } : new Date(reachedDay(reachedMs)),
    reaching: `${reaching} of ${runs}`,
  };
}
