import type { CablePoints } from './cable-points.ts';
import { ringsOf } from './cable-spread.ts';

/**
 * Where the poorly aired part ends is not known. A step equally likely anywhere in the area a between two rings would
 * leave an sd of a / sqrt 12 = 0.29 a; a straight slope from ring to ring is off by a / 12 = 0.08 a (by hand, from the
 * centre out). The core fades rather than ends: 0.35 of the step, 0.10 a.
 */
const EDGE_SHARPNESS = 0.35;
/** The core under the spreader changes less than the rest: sd of that difference, points per point changed. */
const CORE_SD = 0.3;
/** The rim differs less: sd, points per point changed. */
const RIM_SD = 0.1;
/** A cable within this share of the radius hangs in the core. */
export const CORE_RADIUS = 0.25;
/** The cause under which this error stands. */
export const BEYOND_CABLES = 'grain between and beyond the cables';

/**
 * Error of the bin's points removed from seeing it at a few distances from the centre only: the edge between the rings,
 * a core that no cable hangs in, the rim beyond the last, and a bin whose only cables hang in the core.
 *
 * @param scale  points that the bin changed, at least one
 * @returns      standard error, points
 */
export function radialError(cables: readonly CablePoints[], radiusM: number, scale: number): number {
  const rings = ringsOf(cables).map((ring) => ({
    r: Math.min(1, ring[0].fromCentreM / radiusM),
    points: ring.reduce((sum, one) => sum + one.points, 0) / ring.length,
  }));
  let variance = 0;
  for (let i = 1; i < rings.length; i++) {
    const area = rings[i].r ** 2 - rings[i - 1].r ** 2;
    variance += (EDGE_SHARPNESS * area * (rings[i].points - rings[i - 1].points)) ** 2 / 12;
  }
  const outer = rings[rings.length - 1].r;
  variance += ((rings[0].r / 2) ** 2 * CORE_SD * scale) ** 2;
  const rimSd = outer < CORE_RADIUS ? CORE_SD : RIM_SD;
  variance += ((1 - ((outer + 1) / 2) ** 2) * rimSd * scale) ** 2;
  return Math.sqrt(variance);
}
