import { assertRange } from '../base/errors.ts';

/** How grain lies in a round bin. */
export interface GrainShape {
  diameterM: number;
  /** depth of the grain along the wall, above the floor or the hopper's rim, m */
  wallDepthM: number;
  /** height of the peak above the grain's edge at the wall, m; below 0: a hollow; left out: level */
  peakHeightM?: number;
  /** radius of a hollow that does not reach the wall, m; left out: peak or hollow reach it */
  peakRadiusM?: number;
  /** height of a full conical hopper below the wall, m; left out: a flat floor */
  hopperHeightM?: number;
}

/**
 * Volume of grain in a round bin: cylinder, cone of the peak or of the hollow, cone of the hopper.
 *
 * @param shape  diameter 0.1 to 100 m, wall depth 0 to 60 m, peak -30 to 30 m, hopper 0 to 60 m
 * @returns      m3
 * @source       geometry
 * @valid        throws RangeError outside, and on a hollow that is deeper than the grain
 */
export function grainVolumeM3(shape: GrainShape): number {
  const { diameterM, wallDepthM, peakHeightM = 0, peakRadiusM, hopperHeightM = 0 } = shape;
  assertRange('diameterM', diameterM, 0.1, 100);
  assertRange('wallDepthM', wallDepthM, 0, 60);
  assertRange('hopperHeightM', hopperHeightM, 0, 60);
  assertRange('peakHeightM', peakHeightM, Math.max(-30, -(wallDepthM + hopperHeightM)), 30);
  const radius = diameterM / 2;
  const coneRadius = peakRadiusM ?? radius;
  assertRange('peakRadiusM', coneRadius, 0, radius);
  const cone = (r: number, heightM: number) => (Math.PI * r * r * heightM) / 3;
  return Math.PI * radius * radius * wallDepthM + cone(coneRadius, peakHeightM) + cone(radius, hopperHeightM);
}

/**
 * Depth that the same grain would have when levelled on a flat floor: what airflow and sensor shares take.
 *
 * @returns  m
 * @source   geometry
 * @valid    as `grainVolumeM3`
 */
export function levelledDepthM(shape: GrainShape): number {
  return grainVolumeM3(shape) / (Math.PI * (shape.diameterM / 2) ** 2);
}

/**
 * Height of the peak that grain heaps up to under one spout, reaching the wall.
 *
 * @param diameterM   0.1 to 100 m
 * @param reposeDeg   angle of repose of the heap above the level, 0 to 60 degrees
 * @returns           m
 * @source            geometry; angles of 20 to 30 degrees are common practice, the user's to state
 * @valid             throws RangeError outside
 */
export function peakHeightOfReposeM(diameterM: number, reposeDeg: number): number {
  assertRange('diameterM', diameterM, 0.1, 100);
  assertRange('reposeDeg', reposeDeg, 0, 60);
  return (diameterM / 2) * Math.tan((reposeDeg * Math.PI) / 180);
}
