import type { BinGrain } from '../season.ts';

/**
 * How deep the grain stands at a time, m; 0 where the bin is empty: before its first depth (or, with a single depth
 * and no date, before it was filled) and from the moment it was unloaded.
 */
export function grainDepthAt(grain: BinGrain, timeMs: number): number {
  if (grain.unloadedMs !== null && timeMs >= grain.unloadedMs) return 0;
  const steps = grain.depthSteps;
  let depthM = 0;
  for (const step of steps) {
    if (step.fromMs > timeMs) break;
    depthM = step.depthM;
  }
  // Dated depths tell the filling themselves: `filled` may then be the day it was done.
  const undated = steps.length > 0 && steps[0].fromMs === Number.NEGATIVE_INFINITY;
  if (undated && grain.filledMs !== null && timeMs < grain.filledMs) return 0;
  return depthM;
}

/** Positions of the times at which a sensor hangs at or above the grain's surface. */
export function aboveGrain(grain: BinGrain, heightM: number, timeMs: ArrayLike<number>): number[] {
  const out: number[] = [];
  // Nobody said how deep the grain is: nothing is known.
  if (grain.depthSteps.length === 0) return out;
  for (let i = 0; i < timeMs.length; i++) if (heightM >= grainDepthAt(grain, timeMs[i])) out.push(i);
  return out;
}
