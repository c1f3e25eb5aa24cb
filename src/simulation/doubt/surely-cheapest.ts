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
  /** mean over the runs, money */
  cost: number;
}

/**
 * The strategy that is cheapest for all that is in doubt: of those that reach their target in the bin as fitted the ones that
 * reach it in most runs, of these the one of least mean cost. A strategy that is cheapest by a hair, and whose next cold week
 * or dearer month hangs on a tenth of a point, is not the one to be told. Our own rule.
 *
 * @param tried  [strategies][runs]: the bin as fitted first, then each doubt (`DOUBTS`); one that misses as fitted needs no more runs
 * @returns      null where none reaches its target, or none has a cost
 */
export function surelyCheapest(tried: readonly (readonly Tried[])[]): SurelyCheapest | null {
  let best: SurelyCheapest | null = null;
  let most = 0;
  for (const [index, runs] of tried.entries()) {
    if (runs.length === 0 || !runs[0].reached) continue;
    const reached = runs.filter((run) => run.reached).length;
    const cost = runs.reduce((sum, run) => sum + run.cost, 0) / runs.length;
    if (Number.isNaN(cost)) continue;
    if (best !== null && (reached < most || (reached === most && cost >= best.cost))) continue;
    most = reached;
    best = { index, sure: reached === runs.length, cost };
  }
  return best;
}
