import type { LoadedSeason } from '../../season/loaded.ts';
import { clearlyCheapest, surelyCheapest } from '../../simulation/doubt/surely-cheapest.ts';
import { asLogged } from '../../simulation/strategies/as-logged.ts';
import { runsOn } from '../../simulation/strategies/runs-on.ts';
import { STRATEGIES } from '../../simulation/strategies/strategies.ts';
import { untilReached } from '../../simulation/strategies/until-reached.ts';
import { binModel } from '../model/bin-model.ts';
import type { BinModel } from '../model/model-types.ts';
import { runSpecOf } from '../model/run-spec-of.ts';
import { seasonHeldBack } from '../strategies/held-back-season.ts';
import { rulesOfYears } from '../strategies/rules-of-years.ts';
import type { BinReview } from '../types.ts';
import { doubtedOutcome } from './doubted-outcome.ts';
import { hangsOn } from './hangs-on.ts';
import { inHindsight } from './in-hindsight.ts';
import { asLoggedTold } from './more-fans.ts';
import { wayWeights } from './way-weights.ts';
import type { BinWhatIf } from './what-if-types.ts';

/**
 * Fit a bin's bed to its log and, where it can be trusted, run the season again as logged, by every strategy, and by the
 * best schedule found in hindsight.
 */
export function binWhatIf(loaded: LoadedSeason, review: BinReview): BinWhatIf {
  const binId = review.bin.id;
  const model = binModel(loaded, review);
  if (!model.trusted || model.fitted === null) return withoutRuns(binId, model, model.why);
  const found = runSpecOf(loaded, review, model.fitted, model.mayBes);
  if (found.spec === null) return withoutRuns(binId, model, found.why);
  const { spec, specs, logged } = found;
  const known = STRATEGIES.filter((one) => runsOn(one, spec));
  const again = asLogged(spec, logged);
  const loggedRun = doubtedOutcome(specs, again);
  const strategies = known.map((one) => doubtedOutcome(specs, untilReached(one, spec.goal)));
  const best = surelyCheapest(strategies.map((one) => one.tried));
  const pick = best === null ? null : known[best.index];
  const hindsight = inHindsight(spec, known, logged, pick);
  return {
    binId,
    model,
    columns: found.columns.map((one) => ({ ...one, cables: one.cables.map((k) => model.cables[k].cable) })),
    logged: asLoggedTold(loggedRun, review),
    strategies,
    hindsight: hindsight?.run ?? null,
    schedule: hindsight === null ? null : { startMs: spec.hours.startMs, ways: hindsight.ways, logged },
    hangsOn: hangsOn(spec, again, pick === null ? null : untilReached(pick, spec.goal)),
    heldBack: seasonHeldBack(loaded, spec, rulesOfYears(pick?.id ?? null)),
    pick: pick?.id ?? null,
    clear: best !== null && clearlyCheapest(best),
    near: best?.near ?? known.map(() => 0),
    sure: best?.sure ?? false,
    weights: wayWeights(loaded.season, review, loggedRun, strategies),
    why: null,
  };
}

/** The what-if of a bin whose model is not to be run. */
export function withoutRuns(binId: string, model: BinModel, why: string): BinWhatIf {
  return {
    binId,
    model,
    columns: [],
    logged: null,
    strategies: [],
    hindsight: null,
    schedule: null,
    hangsOn: [],
    heldBack: { rules: [], why: 'There is no model to run, see how good the models are.' },
    pick: null,
    clear: false,
    near: [],
    sure: false,
    weights: null,
    why,
  };
}
