import { tQuantile } from '../../base/stats/t-quantile.ts';

/** One cause of error. */
export interface ErrorPart {
  /** in words, for the page */
  cause: string;
  /** standard error, points */
  sd: number;
  /** degrees of freedom behind it; Infinity where it is stated or assumed */
  df: number;
  /** where the cause is a choice between a few: what each would move the value by; else the value holds */
  choices?: readonly Choice[];
}

/** One of several answers of which nobody knows the right one. */
export interface Choice {
  /** points that the value would be moved by */
  moves: number;
  /** how likely, 0 to 1 */
  weight: number;
}

/** A cause whose size is stated or assumed. */
export function firmPart(cause: string, sd: number): ErrorPart {
  return { cause, sd, df: Number.POSITIVE_INFINITY };
}

/**
 * Independent causes together.
 *
 * @returns sd in points; effective degrees of freedom; half-width of the 90 % interval, points
 * @source  F. E. Satterthwaite, An approximate distribution of estimates of variance components, Biometrics Bulletin 2
 *          (1946), 110-114; B. L. Welch, Biometrika 34 (1947), 28-35
 */
export function joinErrors(parts: readonly ErrorPart[]): { sd: number; df: number; half90: number } {
  const variance = parts.reduce((sum, part) => sum + part.sd ** 2, 0);
  const bottom = parts.reduce((sum, part) => sum + part.sd ** 4 / part.df, 0);
  const df = bottom > 0 ? variance ** 2 / bottom : Number.POSITIVE_INFINITY;
  const sd = Math.sqrt(variance);
  return { sd, df, half90: variance === 0 ? 0 : tQuantile(0.95, df) * sd };
}

/** The 90 % interval of a moisture, wet basis, fractions, by the causes of its error. */
export function moistureInterval(moistureWb: number, parts: readonly ErrorPart[]): [low: number, high: number] {
  const half = joinErrors(parts).half90 / 100;
  return [Math.max(0, moistureWb - half), moistureWb + half];
}
