import type { RunSpec } from '../run/run-spec.ts';
import type { Limits } from './limits.ts';

/** The contract's "reached": mean on the wrong side by this at most, wettest layer above the target by this at most. */
const MEAN_SLACK_WB = 0.002;
const LAYER_SLACK_WB = 0.015;
const F_PER_K = 1.8;
const MEAN_SLACK_K = 5 / F_PER_K;
const LAYER_SLACK_K = 10 / F_PER_K;

/**
 * What the best schedule of a bin has to reach: what its goal asks for, and where a goal of drying or conditioning also states
 * a temperature, that too. By default no layer uses up its allowable storage time.
 */
export function limitsOf(spec: RunSpec, lifeUsed = 1): Limits {
  const { goal, targetWb, targetC } = spec;
  const wet = targetWb === null || goal === 'cool' || goal === 'hold' ? Number.NaN : targetWb;
  const warm = targetC === null || goal === 'hold' ? Number.NaN : targetC;
  return {
    wettestMeanWb: goal === 'dry' ? wet + MEAN_SLACK_WB : Number.NaN,
    driestMeanWb: goal === 'condition' ? wet - MEAN_SLACK_WB : Number.NaN,
    wettestLayerWb: wet + LAYER_SLACK_WB,
    driestLayerWb: Number.NaN,
    meanC: warm + MEAN_SLACK_K,
    warmestC: warm + LAYER_SLACK_K,
    lifeUsed,
  };
}
