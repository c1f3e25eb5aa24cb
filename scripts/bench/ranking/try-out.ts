import type { Tried } from '../../../src/simulation/doubt/surely-cheapest.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import type { Strategy } from '../../../src/simulation/strategies/strategy.ts';

/** Bins have no heater: `warmed-air` would be `always-on` again. */
export const RANKED = STRATEGIES.filter((one) => one.heater === undefined);

/** The runs of a strategy in each bed. */
export function tryOut(specs: readonly RunSpec[], strategy: Strategy): Tried[] {
  return specs.map((spec) => {
    const { cost, reachedTarget } = runSeason(spec, strategy).outcome;
    return { cost, reached: reachedTarget };
  });
}
