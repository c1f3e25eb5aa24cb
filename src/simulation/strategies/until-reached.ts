import { reached } from '../run/reached.ts';
import type { Strategy } from './strategy.ts';

/** Place in the memory, the last: strategies count from the first. 1 while the target is reached. */
const RESTS = 7;

/** The mean may come back by so much before the fan is let run again: a manager does not switch for a hair. Our choice. */
const BACK_WB = 0.003;
const BACK_K = 1.5;

/**
 * A strategy that rests once the bin has reached its target, and goes on when it has not any more: nobody dries dry grain. A
 * bin to be dried that also states a temperature is dried first; after that its fan runs only while the air is cooler than the
 * grain, until the temperature is reached too.
 */
export function untilReached(strategy: Strategy, goal: 'dry' | 'cool' | 'condition' | 'hold'): Strategy {
  if (goal === 'hold') return strategy;
  return {
    ...strategy,
    fan(view, parameters, memory) {
      const { targetWb, targetC, grainC, plenumC } = view;
      const wb = Number.isNaN(targetWb) ? null : targetWb;
      const c = Number.isNaN(targetC) ? null : targetC;
      if (reached(goal, wb, c, view)) memory[RESTS] = 1;
      else if (memory[RESTS] === 1 && wentBack(goal, view)) memory[RESTS] = 0;
      if (memory[RESTS] === 0) return strategy.fan(view, parameters, memory);
      if (goal === 'dry' && c !== null && grainC > c + BACK_K && plenumC < grainC - BACK_K) return 1;
      return 0;
    },
  };
}

function wentBack(
  goal: 'dry' | 'cool' | 'condition',
  { grainWb, targetWb, grainC, targetC }: { grainWb: number; targetWb: number; grainC: number; targetC: number },
): boolean {
  if (goal === 'cool') return Math.abs(grainC - targetC) > BACK_K + 5 / 1.8;
  return goal === 'dry' ? grainWb > targetWb + BACK_WB : grainWb < targetWb - BACK_WB;
}
