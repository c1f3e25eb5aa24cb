import { CONDUCTIVITY_LINES } from '../../grain/conductivity.ts';
import { AS_WHEAT } from '../../grain/crops.ts';
import type { BinGrain } from '../../season/season.ts';
import { mediumOf } from '../../simulation/bed/medium-of.ts';
import type { SurfaceGrain } from './surface-distance.ts';

/** Of a slab's diffusivity published values part by a sixth (sd), of its root by half as much. */
const REL_SD = 0.08;
/**
 * Where no conductivity of the crop is published: bulk grain in handbooks (from memory), and the middle of the four crops with a published line,
 * 0.88 to 1.11e-7. A conductivity of heavier grain over the density of a light one, oats or sunflower, would make it twice that. Own judgement: known to 30 %.
 */
const USUAL_M2S = 1e-7;
const USUAL_REL_SD = 0.15;

/** How fast warmth goes through a bin's grain at rest, and how well that is known. @param moistureWb  fraction, wet basis */
export function grainDiffusivity(
  { crop, bulkDensityKgM3 }: Pick<BinGrain, 'crop' | 'bulkDensityKgM3'>,
  moistureWb: number,
): Pick<SurfaceGrain, 'diffusivityM2S' | 'relSd'> {
  if (CONDUCTIVITY_LINES[AS_WHEAT[crop] ?? crop] === undefined) {
    return { diffusivityM2S: USUAL_M2S, relSd: USUAL_REL_SD };
  }
  const dryKgM3 = bulkDensityKgM3 * (1 - moistureWb);
  const { conductivityWMK, heatDryJKgK, heatPerMoistureJKgK } = mediumOf(crop, dryKgM3);
  const heatJKgK = heatDryJKgK + (heatPerMoistureJKgK * moistureWb) / (1 - moistureWb);
  return { diffusivityM2S: conductivityWMK / (dryKgM3 * heatJKgK), relSd: REL_SD };
}
