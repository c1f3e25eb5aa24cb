import { LAYER_SLACK_WB, MEAN_SLACK_WB } from '../run/reached.ts';
import type { View } from '../run/view.ts';

/** The wettest layer rests so far above the target, below what the contract lets pass: its own breath must not wake the fan. */
export const REST_LAYER_WB = LAYER_SLACK_WB - MEAN_SLACK_WB;

/** Whether a fan that dries may rest: mean at the target, no layer far above. A target that is not stated (NaN) asks for nothing. */
export function isDry({ grainWb, wettestWb, targetWb }: View): boolean {
  return !(grainWb > targetWb || wettestWb > targetWb + REST_LAYER_WB);
}

/** Whether grain is wetter than the contract's "reached" lets pass, so that a fan has to dry it. */
export function isWet({ grainWb, wettestWb, targetWb }: View): boolean {
  return grainWb > targetWb + MEAN_SLACK_WB || wettestWb > targetWb + LAYER_SLACK_WB;
}

/** Whether the plenum's air, sent in to cool dry grain, would wet the layer where it enters beyond where a layer may rest. */
export function wouldWet({ plenumEmcWb, targetWb }: View): boolean {
  return plenumEmcWb > targetWb + REST_LAYER_WB;
}
