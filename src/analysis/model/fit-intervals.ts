import { inverse, Matrix } from 'ml-matrix';
import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import { CORE_RADIUS } from '../moisture/radial-error.ts';
import type { BinLog } from './bin-log.ts';
import type { Fit, Model } from './fit-bin.ts';
import { BIAS, FIRST_CABLE, type FitParameters, FLOW } from './fit-parameters.ts';

const STEP = 0.05;
/**
 * Dry matter and heat of the grain, to which a fitted airflow is in proportion, relative standard error; working assumption.
 * The published heats of soybeans part by a fifth.
 */
const GRAIN_REL_SD = 0.05;
const SOYBEAN_REL_SD = 0.1;
/** Airflow at one place of a bin over its mean, relative standard error (common practice: fines under the spreader); cables average it. */
const PLACE_REL_SD = 0.12;
/** The same where all cables hang in the core: it lacks a fifth of the air, or nothing, or a half. */
const CORE_REL_SD = 0.2;
/** Moisture of grain between the cables, points, one cable; working assumption. */
const PLACE_POINTS = 0.3;

export interface FitIntervals {
  flowM3S: Estimate;
  moistureBiasPoints: Estimate;
  endMoistureWb: Estimate;
}

/**
 * Values and 90 % intervals from the residuals' slopes at the fits and, where several isotherms do about as well, from how far
 * these lie apart, each weighing exp(-cost / 2). That samples go together is in their standard errors already.
 *
 * @param finals  by isotherm, the best first
 */
export function fitIntervals(
  log: BinLog,
  finals: readonly { fit: Fit; model: Model }[],
  parameters: FitParameters,
): FitIntervals {
  const [best] = finals;
  const sdOf = standardErrors(best.model, best.fit, parameters);
  const { list } = parameters;
  const flowPer = list.map(({ unit }, k) => {
    if (k === FLOW) return unit;
    return k < FIRST_CABLE ? 0 : unit * log.cables[k - FIRST_CABLE].share * best.fit.cableFlows[k - FIRST_CABLE];
  });
  const weights = finals.map(({ fit }) => Math.exp((best.fit.cost - fit.cost) / 2));
  const flow = spread(
    finals.map(({ fit }) => Math.log(fit.flowM3S)),
    weights,
  );
  const bias = spread(
    finals.map(({ fit }) => 100 * fit.moistureBiasWb),
    weights,
  );
  const ends = finals.map(({ fit, model }) => 100 * model.endWb(fit.values));
  const end = spread(ends, weights);
  const biasSd = sdOf(list.map(({ unit }, k) => (k === BIAS ? 100 * unit : 0)));
  const place = 1 / Math.sqrt(log.cables.length);
  const grain = log.bin.grain.crop === 'soybean' ? SOYBEAN_REL_SD : GRAIN_REL_SD;
  const { bin } = log;
  const inCore = log.cables.every(({ cable }) => {
    const { fromCentreM } = bin.cables.find((one) => one.id === cable)!;
    return fromCentreM <= (CORE_RADIUS * bin.diameterM) / 2;
  });
  const flowSd = Math.hypot(sdOf(flowPer), flow.sd, grain, inCore ? CORE_REL_SD : PLACE_REL_SD * place);
  const endPer = list.map((_, k) => {
    const moved = [...best.fit.values];
    moved[k] += STEP;
    return (100 * best.model.endWb(moved) - ends[0]) / STEP;
  });
  const endSd = Math.hypot(sdOf(endPer), end.sd, PLACE_POINTS * place);
  const value = Math.exp(flow.mean);
  return {
    flowM3S: estimate(value, value * Math.exp(-Z90 * flowSd), value * Math.exp(Z90 * flowSd)),
    moistureBiasPoints: around(bias.mean, Math.hypot(biasSd, bias.sd)),
    endMoistureWb: around(end.mean / 100, endSd / 100),
  };
}

const around = (value: number, sd: number) => estimate(value, value - Z90 * sd, value + Z90 * sd);

function spread(values: readonly number[], weights: readonly number[]): { mean: number; sd: number } {
  const all = weights.reduce((sum, one) => sum + one, 0);
  const mean = values.reduce((sum, one, i) => sum + weights[i] * one, 0) / all;
  return { mean, sd: Math.sqrt(values.reduce((sum, one, i) => sum + weights[i] * (one - mean) ** 2, 0) / all) };
}

/** Standard error of a sum of values with given weights. */
function standardErrors(model: Model, fit: Fit, { list }: FitParameters): (weights: readonly number[]) => number {
  const at = model.residuals(fit.values);
  const slopes = list.map((_, k) => {
    const moved = [...fit.values];
    moved[k] += STEP;
    return model.residuals(moved).map((one, i) => (one - at[i]) / STEP);
  });
  const normal = new Matrix(slopes.map((a) => slopes.map((b) => a.reduce((sum, one, i) => sum + one * b[i], 0))));
  const covariance = inverse(normal);
  return (weights) => {
    const column = Matrix.columnVector([...weights]);
    return Math.sqrt(Math.max(0, column.transpose().mmul(covariance).mmul(column).get(0, 0)));
  };
}
