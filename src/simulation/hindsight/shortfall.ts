import type { Limits } from './limits.ts';
import type { Standing } from './replay.ts';

/** A point of moisture counts like so many kelvin: what a search trades while it is not there yet. Our choice. */
const POINT = 0.01;
const KELVIN_PER_POINT = 3;

/** How far the grain is from what is asked for, in points of mean moisture and the like; 0: all is reached. No allocation. */
export function shortfall(at: Standing, limits: Limits): number {
  return moistureToGo(at, limits) + layerToGo(at, limits) + heatToGo(at, limits);
}

/** Points of mean moisture still to go. */
export function moistureToGo(at: Standing, { driestMeanWb, wettestMeanWb }: Limits): number {
  return over(at.meanWb - wettestMeanWb, POINT) + over(driestMeanWb - at.meanWb, POINT);
}

/** Points still to go in the layer that is worst off. */
export function layerToGo(at: Standing, { wettestLayerWb, driestLayerWb }: Limits): number {
  return over(at.wettestWb - wettestLayerWb, POINT) + over(driestLayerWb - at.driestWb, POINT);
}

/** Kelvin still to go, as points; once the hour for it has passed, what was still to go then. */
export function heatToGo(at: Standing, { meanC, warmestC }: Limits): number {
  if (at.cooled) return 0;
  return at.missed > 0
    ? at.missed
    : over(at.meanC - meanC, KELVIN_PER_POINT) + over(at.warmestC - warmestC, KELVIN_PER_POINT);
}

/** Whether the grain has aged more than it may. */
export function isSpent({ lifeUsed, lossMean }: Standing, limits: Limits): boolean {
  return lifeUsed > limits.lifeUsed || lossMean > limits.lossMean;
}

/** NaN limits ask for nothing. */
function over(excess: number, unit: number): number {
  return excess > 0 ? excess / unit : 0;
}
