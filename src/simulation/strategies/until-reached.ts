import { MEAN_SLACK_K, MEAN_SLACK_WB } from '../run/reached.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { View } from '../run/view.ts';
import { isDry, isWet, REST_LAYER_WB, wouldWet } from './is-dry.ts';
import type { Strategy } from './strategy.ts';

/** Places in the memory, the last: strategies count from the first. 1 while the fan rests at the target; 1 once it did; 1 while it cools. */
const RESTS = 7;
const RESTED = 6;
const COOLS = 5;
/** Grain that has been dried, or cooled before, is cooled only while the air is cooler than its mean by so much. Our choice. */
const COOLER_K = 1.5;
/** Dried grain is cooled in stages of so much: air begins to be sent in when so much cooler (10 degF; common practice: 10 to 15). */
const STAGE_K = 5.6;
/** What was wetted unevenly is evened by air in which grain comes to its target or to so much below. Our choice. */
const EVENING_WB = 0.01;

/**
 * A strategy that rests once the bin is at its target, and goes on when the target is no longer reached: nobody dries dry
 * grain. It rests at the target itself and goes on beyond what the contract's "reached" lets pass, so that a fan does not
 * switch for a hair. What was at its target before is brought back only by air that can: dried grain is dried again by air that
 * dries, cooled grain that warms again in spring is left alone by air that would warm it. A bin to be dried that also states a
 * temperature is dried first; after that its fan runs only while the air is cooler than the grain and does not wet it, in
 * stages, until it is at its temperature too. Grain that was wetted gets air a little drier than its target while the layer where the
 * air enters is too wet for it to count as reached. A strategy that ends by itself is left as it is.
 */
export function untilReached(strategy: Strategy, goal: RunSpec['goal']): Strategy {
  if (strategy.endsItself === true) return strategy;
  const { fan } = strategy;
  return {
    ...strategy,
    fan(view, parameters, memory) {
      memory[RESTS] = (memory[RESTS] === 0 ? isThere(goal, view) : !wentBack(goal, view)) ? 1 : 0;
      if (memory[RESTS] === 1) {
        memory[RESTED] = 1;
        return (goal === 'dry' && coolsOn(view, memory)) || (goal === 'condition' && evens(view)) ? 1 : 0;
      }
      return memory[RESTED] === 1 && !canBringBack(goal, view) ? 0 : fan(view, parameters, memory);
    },
  };
}

/** At the target. A target that is not stated (NaN) is never met. */
function isThere(goal: RunSpec['goal'], view: View): boolean {
  const { grainWb, targetWb, grainC, warmestC, targetC } = view;
  if (goal === 'dry') return !Number.isNaN(targetWb) && isDry(view);
  // Not the wettest layer: air that wets the mean wets the layer where it enters still more.
  if (goal === 'condition') return grainWb >= targetWb;
  return grainC <= targetC && warmestC <= targetC + MEAN_SLACK_K;
}

function wentBack(goal: RunSpec['goal'], view: View): boolean {
  const { grainWb, targetWb, grainC, targetC } = view;
  if (goal === 'dry') return isWet(view);
  if (goal === 'condition') return grainWb < targetWb - MEAN_SLACK_WB;
  // Colder grain than asked for is no reason to run, nor is what a warm day does to the rim. Held grain is judged as cooled grain is.
  return grainC > targetC + MEAN_SLACK_K;
}

function canBringBack(goal: RunSpec['goal'], { plenumC, grainC, plenumEmcWb, targetWb }: View): boolean {
  if (goal === 'dry') return plenumEmcWb <= targetWb;
  if (goal === 'condition') return plenumEmcWb >= targetWb;
  return plenumC < grainC - COOLER_K;
}

/** Whether a layer is too wet for the target, and the air would bring it down and leave the others. */
function evens({ wettestWb, plenumEmcWb, targetWb }: View): boolean {
  const isNear = plenumEmcWb <= targetWb && plenumEmcWb >= targetWb - EVENING_WB;
  return isNear && wettestWb > targetWb + REST_LAYER_WB;
}

/** Whether dried grain is being cooled: a stage goes on until the air is hardly cooler, and pauses for air that would wet it. */
function coolsOn(view: View, memory: Float64Array): boolean {
  const { grainC, targetC, plenumC } = view;
  const coolerK = memory[COOLS] === 1 ? COOLER_K : STAGE_K;
  const cools = grainC > targetC && plenumC < grainC - coolerK;
  memory[COOLS] = cools ? 1 : 0;
  return cools && !wouldWet(view);
}
