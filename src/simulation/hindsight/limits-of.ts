import { LAYER_SLACK_K, LAYER_SLACK_WB, MEAN_SLACK_K, MEAN_SLACK_WB } from '../run/reached.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { Limits } from './limits.ts';

/**
 * What the best schedule of a bin has to reach: what its goal asks for, and where a goal of drying or conditioning also states
 * a temperature, that too. By default no layer uses up its allowable storage time, and loss is not asked for beside it.
 */
export function limitsOf(spec: RunSpec, lifeUsed = 1, lossMean = Number.NaN): Limits {
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
    lossMean,
  };
}
