import { inverse, Matrix } from 'ml-matrix';
import type { Fit, Model } from './fit-bin.ts';
import type { FitParameters } from './fit-parameters.ts';

const STEP = 0.05;

/** Slopes of a number over a fit's values, [parameters]. */
export function slopesOf(
  { values }: Fit,
  { list }: FitParameters,
  of: (values: readonly number[]) => number,
): number[] {
  const at = of(values);
  return list.map((_, k) => (of(movedBy(values, k)) - at) / STEP);
}

/** Slopes of the residuals, [parameters][residuals]. */
export function residualSlopes(model: Model, { values }: Fit, { list }: FitParameters): Float64Array[] {
  const at = model.residuals(values);
  return list.map((_, k) => model.residuals(movedBy(values, k)).map((one, i) => (one - at[i]) / STEP));
}

function movedBy(values: readonly number[], k: number): number[] {
  const moved = [...values];
  moved[k] += STEP;
  return moved;
}

/** The normal matrix of the residuals' slopes, [parameters][parameters]: its inverse is the values' covariance. */
export function normalOf(slopes: readonly Float64Array[]): Matrix {
  return new Matrix(slopes.map((a) => slopes.map((b) => a.reduce((sum, one, i) => sum + one * b[i], 0))));
}

/** Standard error of a sum of values with given weights, by the residuals' slopes, which are in standard errors. */
export function standardErrors(slopes: readonly Float64Array[]): (weights: readonly number[]) => number {
  const covariance = inverse(normalOf(slopes));
  return (weights) => {
    const column = Matrix.columnVector([...weights]);
    return Math.sqrt(Math.max(0, column.transpose().mmul(covariance).mmul(column).get(0, 0)));
  };
}
