import { Z90 } from '../estimate.ts';
import { median } from './quantile.ts';

/** A straight line through points, told by the middle of the slopes of all pairs. */
export interface RobustLine {
  slope: number;
  /** 90 % */
  low: number;
  high: number;
  /** value of the line at x = 0 */
  intercept: number;
  /** correlation of neighbouring residuals by which the interval was widened, 0 to 0.9 */
  neighbourCorrelation: number;
}

/** Beyond it neighbours say the same thing, and no number of points makes an interval. */
const MOST_CORRELATION = 0.9;

/**
 * Slope of y over x as the median of the slopes of all pairs: up to 29 % of the points may be anything. The interval
 * takes the ranks of Kendall's statistic, its variance raised where neighbouring residuals hang together.
 *
 * @param x, y    [points], x rising
 * @param leastX  pairs nearer to each other than this say nothing of a slope
 * @returns       null with fewer than five points, or where the ranks leave no interval
 * @source        theil-1950, sen-1968; the factor (1 + r) / (1 - r) for neighbours that hang together: bayley-hammersley-1946, its bias: kendall-1954
 */
export function theilSen(x: readonly number[], y: readonly number[], leastX: number): RobustLine | null {
  const count = x.length;
  if (count < 5) return null;
  const slopes: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (x[j] - x[i] >= leastX) slopes.push((y[j] - y[i]) / (x[j] - x[i]));
    }
  }
  if (slopes.length < 6) return null;
  slopes.sort((a, b) => a - b);
  const slope = median(slopes);
  const intercept = median(y.map((value, i) => value - slope * x[i]));
  const residuals = y.map((value, i) => value - slope * x[i] - intercept);
  const r = neighbourCorrelation(residuals);
  const variance = ((count * (count - 1) * (2 * count + 5)) / 18) * ((1 + r) / (1 - r));
  // Pairs that were left out take their part of the statistic with them.
  const part = slopes.length / ((count * (count - 1)) / 2);
  const width = Z90 * Math.sqrt(variance) * part;
  const lowRank = Math.floor((slopes.length - width) / 2) - 1;
  const highRank = Math.ceil((slopes.length + width) / 2);
  if (lowRank < 0 || highRank >= slopes.length) return null;
  return { slope, low: slopes[lowRank], high: slopes[highRank], intercept, neighbourCorrelation: r };
}

/** Correlation of neighbours, freed of its bias: of n values it comes out (1 + 4 r) / n too low (kendall-1954). None where it is not above zero. */
function neighbourCorrelation(residuals: readonly number[]): number {
  const mean = residuals.reduce((sum, one) => sum + one, 0) / residuals.length;
  let own = 0;
  let next = 0;
  residuals.forEach((one, i) => {
    own += (one - mean) ** 2;
    if (i > 0) next += (one - mean) * (residuals[i - 1] - mean);
  });
  const seen = own > 0 ? next / own : 0;
  return seen > 0 ? Math.min(MOST_CORRELATION, seen + (1 + 4 * seen) / residuals.length) : 0;
}
