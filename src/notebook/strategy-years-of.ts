import { seasonHeldBack } from '../analysis/strategies/held-back-season.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { strategyOf } from '../simulation/strategies/strategies.ts';
import type { Played } from './strategy-words.ts';
import type { BinYears } from './strategy-years.ts';

const RULES = 2;

/** The bins' years: the humidity rule, whose hours hang on the weather most, and the rule that the kit would take. */
export function yearsOfBins(loaded: LoadedSeason, bins: readonly Played[]): BinYears[] {
  return bins.map(({ review, whatIf }) => {
    const { name } = review.bin;
    const { model, pick, why } = whatIf;
    if (why !== null || model.fitted === null)
      return { name, rules: [], why: 'There is no model to run, see how good the models are.' };
    // What a heater adds is not the weather's.
    const taken = pick === null || strategyOf(pick).heater !== undefined ? [] : [pick];
    const ids = [...new Set(['humidity-limit', ...taken, 'always-on'])].slice(0, RULES);
    return { name, ...seasonHeldBack(loaded, review, model.fitted, ids) };
  });
}
