import jstat from 'jstat';
import { halve } from '../halve.ts';

/** One of several answers, about which errors spread normally. Weights need not sum to 1. */
export interface Middle {
  at: number;
  weight: number;
}

/**
 * Share of a mixture of normal distributions below a place.
 *
 * @param sd  of each about its middle, > 0
 * @source    library `jstat` (normal distribution)
 */
export function mixtureBelow(x: number, middles: readonly Middle[], sd: number): number {
  const all = middles.reduce((sum, one) => sum + one.weight, 0);
  return middles.reduce((sum, { at, weight }) => sum + weight * jstat.normal.cdf(x, at, sd), 0) / all;
}

/** The place below which a share p of the mixture lies, 0.001 to 0.999. */
export function mixtureQuantile(p: number, middles: readonly Middle[], sd: number): number {
  const places = middles.map((one) => one.at);
  const [low, high] = [Math.min(...places) - 4 * sd, Math.max(...places) + 4 * sd];
  return halve(low, high, (x) => mixtureBelow(x, middles, sd) < p);
}

/** Density of the mixture, but for a constant factor. */
export function mixtureDensity(x: number, middles: readonly Middle[], sd: number): number {
  return middles.reduce((sum, { at, weight }) => sum + weight * Math.exp(-(((x - at) / sd) ** 2) / 2), 0);
}
