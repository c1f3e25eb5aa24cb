import { quantile } from '../../../src/base/stats/quantile.ts';
import type { Case } from './cases.ts';

export interface Score {
  /** cases, and how many of them the kit withheld */
  n: number;
  withheld: number;
  /** share of the told intervals that hold the truth */
  covered: number;
  /** median of the half-width over that of the estimator that knows the error structure */
  widthRatio: number;
  /** mean and median of (middle less truth) / scale, and the standard error of the mean */
  bias: number;
  biasMedian: number;
  biasError: number;
}

export type Told = Case & { value: number };

export const told = (cases: readonly Case[]): Told[] => cases.filter((one): one is Told => one.value !== null);

/** Half-widths, by case, of the estimator that knows the error structure; see `knowingHalves`. */
export type Halves = ReadonlyMap<Case, number>;

/**
 * The yardstick for the widths: an estimator with the kit's middles that knows how the generator makes errors. Of each
 * bin it knows the error variance that its readings leave; the rest (what the cables do not see, leaning readings,
 * isotherms, fan logs, packing) it knows by the sd in units of the case's scale among bins of its group, as replicates of
 * the generator show it. One factor, about 1.64, makes its intervals hold the truth in exactly 90 % of all cases.
 */
export function knowingHalves(cases: readonly Case[]): Halves {
  const all = told(cases);
  const rest = new Map<string, number>();
  for (const group of new Set(all.map((one) => one.group))) {
    const own = all.filter((one) => one.group === group);
    const mean =
      own.reduce((sum, one) => sum + ((one.value - one.truth) ** 2 - one.readingVariance) / one.scale ** 2, 0) /
      own.length;
    rest.set(group, Math.max(0, mean));
  }
  const sdOf = (one: Case) => Math.sqrt(one.readingVariance + one.scale ** 2 * rest.get(one.group)!);
  const factor = quantile(
    all.map((one) => Math.abs(one.value - one.truth) / sdOf(one)),
    0.9,
  );
  return new Map(all.map((one) => [one, factor * sdOf(one)]));
}

export function scoreOf(cases: readonly Case[], halves: Halves): Score {
  const all = told(cases);
  const errors = all.map((one) => (one.value - one.truth) / one.scale);
  const bias = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const variance = errors.reduce((sum, error) => sum + (error - bias) ** 2, 0) / Math.max(1, errors.length - 1);
  return {
    n: cases.length,
    withheld: cases.length - all.length,
    covered: all.filter((one) => one.low <= one.truth && one.truth <= one.high).length / all.length,
    widthRatio: quantile(
      all.map((one) => (one.high - one.low) / 2 / halves.get(one)!),
      0.5,
    ),
    bias,
    biasMedian: quantile(errors, 0.5),
    biasError: Math.sqrt(variance / errors.length),
  };
}
