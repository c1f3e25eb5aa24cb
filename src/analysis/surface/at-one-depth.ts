import type { Bin } from '../../season/season.ts';
import { type StepGrid, stepMiddles } from '../condition/step-grid.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';

type Stretch = readonly [from: number, to: number];

/** Rests through which the grain stood at one stated depth. */
export interface DepthRests {
  /** levelled, m; null where none is stated */
  depthM: number | null;
  stretches: Stretch[];
}

/**
 * Rests cut where the stated depth changes, those of the depth at which the grain stood longest at rest: a bin that was cored or topped up is held
 * against what was stated for then.
 */
export function atOneDepth(bin: Bin, grid: StepGrid, stretches: readonly Stretch[]): DepthRests {
  const depths = Array.from(stepMiddles(grid), (ms) => grainDepthAt(bin, ms));
  const byDepth = new Map<number | null, { steps: number; stretches: Stretch[] }>();
  for (const [from, to] of stretches) {
    let start = from;
    for (let step = from + 1; step <= to; step++) {
      if (step < to && depths[step] === depths[start]) continue;
      const same = byDepth.get(depths[start]) ?? { steps: 0, stretches: [] };
      same.steps += step - start;
      same.stretches.push([start, step]);
      byDepth.set(depths[start], same);
      start = step;
    }
  }
  const [depthM, longest] = [...byDepth].reduce((most, one) => (one[1].steps > most[1].steps ? one : most));
  return { depthM, stretches: longest.stretches };
}
