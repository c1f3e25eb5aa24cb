import { doubtedSpec } from '../../../src/simulation/doubt/doubted-spec.ts';
import { doubtsOf } from '../../../src/simulation/doubt/doubts.ts';
import type { Tried } from '../../../src/simulation/doubt/surely-cheapest.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import type { Strategy } from '../../../src/simulation/strategies/strategy.ts';

/** Bins have no heater: `warmed-air` would be `always-on` again. */
export const RANKED = STRATEGIES.filter((one) => one.heater === undefined);
/** Dearer than the cheapest by no more is right. */
export const WITHIN = 1.05;

/** The runs of a strategy with each doubt; only the first where that misses. @param openWb  see `doubtsOf` */
export function tryOut(spec: RunSpec, strategy: Strategy, openWb = 0): Tried[] {
  const runs: Tried[] = [];
  for (const doubt of doubtsOf(openWb)) {
    const { cost, reachedTarget } = runSeason(doubtedSpec(spec, doubt), strategy).outcome;
    runs.push({ cost, reached: reachedTarget });
    if (!runs[0].reached) break;
  }
  return runs;
}
