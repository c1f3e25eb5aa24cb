import { inverse, Matrix } from 'ml-matrix';
import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import type { Fit, Model } from './fit-bin.ts';
import { BIAS, FIRST_CABLE, type FitParameters, FLOW } from './fit-parameters.ts';

const STEP = 0.05;
/** Dry matter and heat of the grain, to which a fitted airflow is in proportion, relative standard error; working assumption. */
const GRAIN_REL_SD = 0.05;
/** Airflow at one place of a bin over its mean, relative standard error (common practice: fines under the spreader); cables average it. */
const PLACE_REL_SD = 0.12;

export interface FitIntervals {
  flowM3S: Estimate;
  moistureBiasPoints: Estimate;
  endMoistureWb: (value: number) => Estimate;
}

/**
 * 90 % intervals from the residuals' slopes at the fit. That samples go together is in their standard errors already.
 */
export function fitIntervals(log: BinLog, model: Model, fit: Fit, parameters: FitParameters): FitIntervals {
  const { list } = parameters;
  const at = model.residuals(fit.values);
  const count = list.length;
  const slopes = list.map((_, k) => {
    const moved = [...fit.values];
    moved[k] += STEP;
    return model.residuals(moved).map((one, i) => (one - at[i]) / STEP);
  });
  const normal = new Matrix(count, count);
  for (let a = 0; a < count; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let i = 0; i < at.length; i++) sum += slopes[a][i] * slopes[b][i];
      normal.set(a, b, sum);
      normal.set(b, a, sum);
    }
  }
  const covariance = inverse(normal);
  // Samples that scatter wider than their stated errors widen everything.
  const data = at.length - count;
  const scatter = Math.max(
    1,
    Math.sqrt(at.slice(0, data).reduce((sum, one) => sum + one * one, 0) / Math.max(1, data / 24)),
  );
  const sdOf = (weights: readonly number[]) => {
    const column = Matrix.columnVector([...weights]);
    return scatter * Math.sqrt(Math.max(0, column.transpose().mmul(covariance).mmul(column).get(0, 0)));
  };
  const flowWeights = list.map(({ unit }, k) => {
    if (k === FLOW) return unit;
    return k >= FIRST_CABLE ? unit * log.cables[k - FIRST_CABLE].share * fit.cableFlows[k - FIRST_CABLE] : 0;
  });
  const relSd = Math.hypot(sdOf(flowWeights), GRAIN_REL_SD, PLACE_REL_SD / Math.sqrt(log.cables.length));
  const bias = 100 * fit.moistureBiasWb;
  const biasSd = sdOf(list.map(({ unit }, k) => (k === BIAS ? 100 * unit : 0)));
  const endSd = Math.hypot(biasSd, 0.15) / 100;
  const around = (value: number, sd: number) => estimate(value, value - Z90 * sd, value + Z90 * sd);
  return {
    flowM3S: estimate(fit.flowM3S, fit.flowM3S * Math.exp(-Z90 * relSd), fit.flowM3S * Math.exp(Z90 * relSd)),
    moistureBiasPoints: around(bias, biasSd),
    endMoistureWb: (value) => around(value, endSd),
  };
}
