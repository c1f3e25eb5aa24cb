/** What a strategy came to in one run. */
export interface Tried {
  /** money; NaN where it cannot be told */
  cost: number;
  reached: boolean;
}

export interface SurelyCheapest {
  /** which strategy */
  index: number;
  /** whether it reached its target in every run */
  sure: boolean;
  /** runs of each strategy */
  runs: number;
  /** mean over the runs, money */
  cost: number;
  /** mean over the runs of its cost over that of the run's cheapest less 1, a miss as `MISS`; 0: cheapest whatever is in doubt */
  regret: number;
  /** of each strategy, the runs in which it reaches its target for no more than 5 % above the run's cheapest, [strategies] */
  near: number[];
}

/** As cheap as the cheapest. */
export const NEAR = 1.05;

/** A strategy as cheap as the cheapest in fewer of the runs is one of those that may be it: as sure as the kit's 90 % intervals are. */
const CLEAR = 0.9;
/** A strategy that misses its target, or is dearer than the cheapest by so much, was the wrong one to name: no worse than that. */
const MISS = 0.5;

/**
 * The strategy to be named cheapest when the bin is known as well as a fit leaves it: of those that reach their target in the bin as
 * fitted the one that is as cheap as the cheapest in the most runs, among equals that of the least mean regret over all runs. One
 * that is cheapest by a hair as fitted, and whose next cold week or dearer month hangs on a tenth of a point, is not the one to be
 * told. So a rule that misses in some runs may go before one that never does and is seldom near; `sure` says so. Mean regret is a
 * usual measure of decisions under doubt; what a miss weighs is our choice.
 *
 * @param tried  [strategies][runs]: the bin as fitted first, then each that it may be
 * @returns      null where none reaches its target, or a cost is not known
 */
export function surelyCheapest(tried: readonly (readonly Tried[])[]): SurelyCheapest | null {
  const there = tried.flatMap((runs, index) => (runs.length > 0 && runs[0].reached ? [{ index, runs }] : []));
  const count = Math.max(0, ...there.map(({ runs }) => runs.length));
  // Of a run also those that miss as fitted and come there in it.
  const least = Array.from({ length: count }, (_, k) =>
    Math.min(...tried.map((runs) => (runs[k]?.reached ? runs[k].cost : Number.POSITIVE_INFINITY))),
  );
  const near = tried.map((runs) => runs.filter(({ cost, reached }, k) => reached && cost <= NEAR * least[k]).length);
  let best: SurelyCheapest | null = null;
  for (const { index, runs } of there) {
    const regrets = runs.map((run, k) => (run.reached ? Math.min(MISS, regretOf(run.cost, least[k])) : MISS));
    const regret = meanOf(regrets);
    // Without a price nothing is cheap.
    if (Number.isNaN(regret)) continue;
    if (best !== null && near[index] < near[best.index]) continue;
    if (best !== null && near[index] === near[best.index] && regret >= best.regret) continue;
    const sure = runs.every((run) => run.reached);
    best = { index, sure, runs: count, cost: meanOf(runs.map((run) => run.cost)), regret, near };
  }
  return best;
}

/** Whether the strategy named is to be told as the cheapest, and not as one of several that may be. */
export function clearlyCheapest({ index, near, runs }: Pick<SurelyCheapest, 'index' | 'near' | 'runs'>): boolean {
  return near[index] >= CLEAR * runs;
}

/** Where the cheapest costs nothing any cost is too much. */
const regretOf = (cost: number, least: number): number => (cost === least ? 0 : cost / least - 1);

const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
