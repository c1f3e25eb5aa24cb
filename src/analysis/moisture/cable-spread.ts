import type { CablePoints } from './cable-points.ts';

/** How much cables at one distance from the centre differ, per point that a bin changed (at least one point). */
export interface CableSpread {
  /** variance, (points per point)^2; 0 where df is 0 */
  variance: number;
  /** degrees of freedom */
  df: number;
}

/**
 * What is assumed before any cable is looked at: places at one distance from the centre get air, and so dry, alike
 * within about a twelfth (one standard deviation), held as firmly as three degrees of freedom. A working assumption of
 * the kit, from memory of airflow surveys in farm bins; five cables at one distance outweigh it.
 */
export const ASSUMED_SPREAD: CableSpread = { variance: 0.08 ** 2, df: 3 };

const SAME_DISTANCE_M = 0.01;

/** Deviations grow with what was removed; a bin that changed little still differs by this much. */
function changeScale(points: number): number {
  return Math.max(1, Math.abs(points));
}

/** Cables grouped by their distance from the centre, from the centre out. */
export function ringsOf(cables: readonly CablePoints[]): CablePoints[][] {
  const rings: CablePoints[][] = [];
  for (const cable of [...cables].sort((a, b) => a.fromCentreM - b.fromCentreM)) {
    const ring = rings.at(-1);
    if (ring !== undefined && cable.fromCentreM - ring[ring.length - 1].fromCentreM <= SAME_DISTANCE_M)
      ring.push(cable);
    else rings.push([cable]);
  }
  return rings;
}

/**
 * Spread of the cables at one distance about their mean. Cables at different distances differ for a reason (the centre
 * is often short of air), which their rings' weights already take care of.
 *
 * @param points  change of the whole bin, points
 */
export function ownSpread(cables: readonly CablePoints[], points: number): CableSpread {
  let squares = 0;
  let df = 0;
  for (const ring of ringsOf(cables)) {
    const mean = ring.reduce((sum, one) => sum + one.points, 0) / ring.length;
    squares += ring.reduce((sum, one) => sum + (one.points - mean) ** 2, 0);
    df += ring.length - 1;
  }
  return { variance: df === 0 ? 0 : squares / df / changeScale(points) ** 2, df };
}

/** Spreads joined: variances weighted by their degrees of freedom. */
export function joinSpreads(spreads: readonly CableSpread[]): CableSpread {
  const df = spreads.reduce((sum, one) => sum + one.df, 0);
  const variance = df === 0 ? 0 : spreads.reduce((sum, one) => sum + one.df * one.variance, 0) / df;
  return { variance, df };
}

/**
 * The spread between cables over several bins of a season.
 *
 * @param bins  each bin's cables and its change, points
 */
export function pooledCableSpread(bins: readonly { cables: readonly CablePoints[]; points: number }[]): CableSpread {
  return joinSpreads(bins.map((bin) => ownSpread(bin.cables, bin.points)));
}
