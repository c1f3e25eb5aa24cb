import type { Estimate } from '../../base/estimate.ts';
import type { Outcome } from '../../simulation/run/outcome.ts';
import type { BinModel } from '../model/model-types.ts';
import type { BinHeldBack } from '../strategies/held-back-season.ts';
import type { HangsOn } from './hangs-on.ts';
import type { WayWeights } from './way-weights.ts';

/** Why a cost of a run is missing. */
export const NO_PRICE = 'A price of the energy is not known for all of its hours.';

/** What a way to run the fan would have come to in a bin's own season, by its fitted bed. */
export interface StrategyOutcome {
  /** as `summary.json` names it */
  id: string;
  title: string;
  outcome: Outcome;
  /** money; the interval spans the runs in the bin as fitted and in those that go with the log as well, see `mayBes`. None for the search in hindsight */
  cost: Estimate;
  /** of those runs, how many reach the target */
  reaching: number;
  runs: number;
  /** ms UTC from which the target is reached; null where it is not */
  reachedMs: number | null;
}

/** What a run did hour by hour. */
export interface WrittenHours {
  /** start of the first hour, ms UTC */
  startMs: number;
  /** 0: off, 1: fan, 2: fan and heater, [hours] */
  ways: Uint8Array;
  /** part of each hour in which the fan ran by its log, [hours] */
  logged: Float64Array;
}

/** An upright part of the bin that was run with air of its own. */
export interface RunColumn {
  /** of the floor */
  areaShare: number;
  /** airflow over the bin's mean */
  airShare: number;
  /** that hang in it */
  cables: readonly string[];
  /** its air is what is usual there: no cable tells it */
  usual: boolean;
}

/** The what-if of one bin. */
export interface BinWhatIf {
  binId: string;
  model: BinModel;
  /** of the bed that was run, rising air; empty where there are no runs */
  columns: readonly RunColumn[];
  /** as it was run, by the bed; null where there are no runs */
  logged: StrategyOutcome | null;
  /** the kit's strategies in their order; empty where the model is not trusted */
  strategies: readonly StrategyOutcome[];
  /** the cheapest schedule found with the weather known; null where none keeps the grain, the bin is to be held, or there are no runs */
  hindsight: StrategyOutcome | null;
  /** the schedule of `hindsight`, hour by hour; null with it */
  schedule: WrittenHours | null;
  /** the runs with another choice of physics, the fitted one first; empty where there are no runs */
  hangsOn: readonly HangsOn[];
  /** what held back the years on file, by the rule whose hours hang on the weather most and the rule that the kit would take */
  heldBack: BinHeldBack;
  /** id of the strategy that is cheapest for all that is in doubt; null where none reaches the target, or no cost of those that do is known */
  pick: string | null;
  /** whether it is told as the cheapest, and not as one of several that may be */
  clear: boolean;
  /** of each strategy, the runs in which it is the cheapest or within 5 % of it, [strategies] */
  near: readonly number[];
  /** whether it reaches in every doubted run */
  sure: boolean;
  /** the ways with the weight that they dry away counted; null where that cannot be told, see `wayWeights` */
  weights: WayWeights | null;
  /** why there are no runs; null where there are */
  why: string | null;
}
