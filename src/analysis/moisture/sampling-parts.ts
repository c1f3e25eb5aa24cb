import type { Bin } from '../../season/season.ts';
import { type CablePoints, cablePoints, type SensorChange } from './cable-points.ts';
import { ASSUMED_SPREAD, type CableSpread, joinSpreads, ownSpread } from './cable-spread.ts';
import type { ErrorPart } from './error-part.ts';
import { heightError } from './height-error.ts';
import { BEYOND_CABLES, radialError } from './radial-error.ts';

/**
 * Errors from seeing a bin by a few sensors only: spread between cables, what lies between the heights, and what lies
 * between and beyond the distances from the centre.
 *
 * @param changes  what is averaged, by sensor, as a change; a single moment is a change from zero
 * @param points   by how much the bin changed, points; it sets the scale of what is not seen
 * @param pooled   spread of the season's other bins; null where there are none
 * @param air      where the air comes in
 */
export function samplingParts(
  changes: readonly SensorChange[],
  depthM: number,
  diameterM: number,
  points: number,
  pooled: CableSpread | null,
  air: Bin['air'],
): ErrorPart[] {
  const cables: CablePoints[] = cablePoints(changes);
  const scale = Math.max(1, Math.abs(points));
  const spread = joinSpreads([ASSUMED_SPREAD, ownSpread(cables, points), ...(pooled === null ? [] : [pooled])]);
  const weights = Math.sqrt(cables.reduce((sum, one) => sum + one.weight ** 2, 0));
  return [
    { cause: 'spread between cables', sd: scale * Math.sqrt(spread.variance) * weights, df: spread.df },
    {
      cause: 'fronts between the heights of the sensors',
      sd: heightError(changes, depthM, scale, air),
      df: Number.POSITIVE_INFINITY,
    },
    {
      cause: BEYOND_CABLES,
      sd: radialError(cables, diameterM / 2, scale),
      df: Number.POSITIVE_INFINITY,
    },
  ];
}
