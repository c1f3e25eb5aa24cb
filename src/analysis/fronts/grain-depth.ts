import type { Bin } from '../../season/season.ts';

/** Levelled depth at a moment, m: 0 before the first step, null where none is stated. */
export function grainDepthAt(bin: Bin, ms: number): number | null {
  const steps = bin.grain.depthSteps;
  if (steps.length === 0) return null;
  let depthM = 0;
  for (const step of steps) if (step.fromMs <= ms) depthM = step.depthM;
  return depthM;
}
