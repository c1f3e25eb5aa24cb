import { LAYER_SLACK_WB, MEAN_SLACK_K, MEAN_SLACK_WB, reached } from '../run/reached.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { View } from '../run/view.ts';
import type { Strategy } from './strategy.ts';

/** Places in the memory, the last: strategies count from the first. 1 while the fan rests at the target; 1 once it did. */
const RESTS = 7;
const RESTED = 6;
/** The wettest layer rests so far below what the contract lets pass: the heat and water of its own breath must not wake the fan. */
const REST_LAYER_WB = LAYER_SLACK_WB - MEAN_SLACK_WB;
/** Grain that has been dried, or cooled before, is cooled only while the air is cooler than its mean by so much. Our choice. */
const COOLER_K = 1.5;

/**
 * A strategy that rests once the bin is at its target, and goes on when the target is no longer reached: nobody dries dry
 * grain. It rests at the target itself and goes on beyond what the contract's "reached" lets pass, so that a fan does not
 * switch for a hair. A bin to be dried that also states a temperature is dried first; after that its fan runs only while the
 * air is cooler than the grain, until that is at its temperature too. Grain that was cooled and warms again in spring is left
 * alone by air that would warm it. A strategy that ends by itself is left as it is.
 */
export function untilReached(strategy: Strategy, goal: RunSpec['goal']): Strategy {
  if (strategy.endsItself === true) return strategy;
  return {
    ...strategy,
    fan(view, parameters, memory) {
      memory[RESTS] = (memory[RESTS] === 0 ? isThere(goal, view) : !wentBack(goal, view)) ? 1 : 0;
      const { grainC, targetC, plenumC } = view;
      const cooler = plenumC < grainC - COOLER_K;
      if (memory[RESTS] === 1) {
        memory[RESTED] = 1;
        return goal === 'dry' && grainC > targetC && cooler ? 1 : 0;
      }
      const cools = goal === 'cool' || goal === 'hold';
      return cools && memory[RESTED] === 1 && !cooler ? 0 : strategy.fan(view, parameters, memory);
    },
  };
}

/** At the target. A target that is not stated (NaN) is never met. */
function isThere(goal: RunSpec['goal'], { grainWb, wettestWb, targetWb, grainC, warmestC, targetC }: View): boolean {
  if (goal === 'dry') return grainWb <= targetWb && wettestWb <= targetWb + REST_LAYER_WB;
  // Not the wettest layer: air that wets the mean wets the layer where it enters still more.
  if (goal === 'condition') return grainWb >= targetWb;
  return grainC <= targetC && warmestC <= targetC + MEAN_SLACK_K;
}

function wentBack(goal: RunSpec['goal'], view: View): boolean {
  const { grainWb, targetWb, grainC, targetC } = view;
  if (goal === 'dry') return !reached('dry', targetWb, null, view);
  if (goal === 'condition') return grainWb < targetWb - MEAN_SLACK_WB;
  // Grain that has become colder than asked for is no reason to run. Held grain is judged as cooled grain is.
  return grainC > targetC && !reached('cool', null, targetC, view);
}
