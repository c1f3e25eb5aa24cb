import type { BinModel } from '../../analysis/model/model-types.ts';
import { type RunFound, runSpecOf } from '../../analysis/model/run-spec-of.ts';
import type { BinReview } from '../../analysis/types.ts';
import { doubtedOutcome } from '../../analysis/what-if/doubted-outcome.ts';
import type { StrategyOutcome } from '../../analysis/what-if/what-if-types.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';

/** A bin's season on its fitted bed, ready to be run, with the runs of the kit's own ways so far. */
interface BedRuns {
  model: BinModel;
  found: RunFound;
  specs: readonly RunSpec[];
  /** by the way's id: what the kit's own come to does not change while season and bed stand */
  known: Map<string, StrategyOutcome>;
}

/** By bin, for as long as the season is held. */
const made = new WeakMap<LoadedSeason, Map<string, BedRuns>>();

function bedRuns(loaded: LoadedSeason, review: BinReview, model: BinModel): BedRuns {
  const before = made.get(loaded) ?? new Map<string, BedRuns>();
  made.set(loaded, before);
  const there = before.get(review.bin.id);
  if (there !== undefined && there.model === model) return there;
  const found = runSpecOf(loaded, review, model.fitted ?? undefined, model.mayBes);
  const specs = found.spec === null ? [] : found.specs;
  const fresh = { model, found, specs, known: new Map() };
  before.set(review.bin.id, fresh);
  return fresh;
}

/** @param model  a trusted one, with what it was fitted to */
export function bedOf(loaded: LoadedSeason, review: BinReview, model: BinModel): RunFound {
  return bedRuns(loaded, review, model).found;
}

/** What a strategy comes to on a bed of `bedOf`. @param own  it is a notebook's, which may say something else the next time */
export function runOn(
  loaded: LoadedSeason,
  review: BinReview,
  model: BinModel,
  strategy: Strategy,
  own: boolean,
): StrategyOutcome {
  const { specs, known } = bedRuns(loaded, review, model);
  if (own) return doubtedOutcome(specs, strategy);
  const run = known.get(strategy.id) ?? doubtedOutcome(specs, strategy);
  known.set(strategy.id, run);
  // A notebook may do with it what it likes.
  return structuredClone(run);
}

/** What has been tried of a season so far, the kit's own ways alone, to be ready for the next time. */
export function triedWays(loaded: LoadedSeason): { binId: string; ways: string[] }[] {
  return [...(made.get(loaded) ?? [])].map(([binId, { known }]) => ({ binId, ways: [...known.keys()] }));
}
