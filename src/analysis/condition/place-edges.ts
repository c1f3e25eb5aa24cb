import type { Bin } from '../../season/season.ts';
import type { SensorPlace } from './condition-types.ts';

/** To the surface, as low as it stood while the place was in the grain, to the wall, and to the nearest of surface, floor and wall, m. */
export function edgesOf(
  bin: Bin,
  { cable, heightM }: SensorPlace,
): {
  toSurfaceM: number;
  toWallM: number;
  toEdgeM: number;
} {
  const depths = bin.grain.depthSteps.map((step) => step.depthM).filter((depth) => depth > heightM);
  const toSurfaceM = depths.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...depths) - heightM;
  const fromCentreM = bin.cables.find((one) => one.id === cable)?.fromCentreM ?? 0;
  const toWallM = bin.diameterM / 2 - fromCentreM;
  return { toSurfaceM, toWallM, toEdgeM: Math.min(toSurfaceM, heightM, toWallM) };
}
