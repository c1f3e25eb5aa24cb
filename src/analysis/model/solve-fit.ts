import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Fit, Model } from './fit-bin.ts';
import type { FitParameters } from './fit-parameters.ts';

/** Bounded least squares from a start, until a round of so many steps no longer helps. */
export function solve(model: Model, { list }: FitParameters, start: readonly number[], rounds: number, steps = 3): Fit {
  let values = [...start];
  let cost = costOf(model, values);
  const count = model.residuals(values).length;
  const data = { x: Array.from({ length: count }, (_, i) => i), y: new Array<number>(count).fill(0) };
  for (let round = 0; round < rounds; round++) {
    const { parameterValues } = levenbergMarquardt(
      data,
      (tried) => {
        const residuals = model.residuals(tried);
        return (i) => residuals[i];
      },
      {
        initialValues: values,
        minValues: list.map((one) => one.low),
        maxValues: list.map((one) => one.high),
        gradientDifference: 0.05,
        damping: 1,
        maxIterations: steps,
      },
    );
    const found = costOf(model, parameterValues);
    if (!(found < cost)) break;
    const gained = cost - found;
    values = parameterValues;
    cost = found;
    if (gained < 0.002 * cost) break;
  }
  return model.fitAt(values, cost);
}

/** Sum of the residuals' squares. */
export function costOf(model: Model, values: readonly number[]): number {
  return model.residuals(values).reduce((sum, one) => sum + one * one, 0);
}
