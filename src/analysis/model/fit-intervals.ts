import { inverse, Matrix } from 'ml-matrix';
import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import type { Fit, Model } from './fit-bin.ts';
import { BIAS, FIRST_CABLE, type FitParameters, FLOW } from './fit-parameters.ts';
import { joinedFlow } from './joined-flow.ts';

const STEP = 0.05;
/** Dry matter of the grain, to which a fitted airflow is in proportion: by tickets, and by depth, test weight and packing. */
const WEIGHED_REL_SD = 0.015;
const MEASURED_REL_SD = 0.03;
/** Published heats and their way over moisture, beside what the fit leaves open; those of soybeans part by a fifth. Working assumption. */
const HEAT_REL_SD = 0.03;
const SOYBEAN_HEAT_REL_SD = 0.06;
/** How much less a cost counts than if the bed left nothing out but chance. */
const TEMPER = 2;
/** Moisture of grain between the cables, points, one cable; working assumption. */
const PLACE_POINTS = 0.3;

export interface FitIntervals {
  /** of the whole bin */
  flowM3S: Estimate;
  /** by the grain at the cables alone, taken for the bin's */
  flowAtCables: Estimate;
  /** airflow of the bin over that at its cables */
  flowOverCables: number;
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
  const weights = finals.map(({ fit }) => Math.exp((best.fit.cost - fit.cost) / 2 / TEMPER));
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
  const grain = Math.hypot(
    log.review.grain.from === 'tickets' ? WEIGHED_REL_SD : MEASURED_REL_SD,
    log.bin.grain.crop === 'soybean' ? SOYBEAN_HEAT_REL_SD : HEAT_REL_SD,
  );
  const cablesSd = Math.hypot(sdOf(flowPer), flow.sd, grain);
  const joined = joinedFlow(log, flow.mean, cablesSd);
  const endPer = list.map((_, k) => {
    const moved = [...best.fit.values];
    moved[k] += STEP;
    return (100 * best.model.endWb(moved) - ends[0]) / STEP;
  });
  // The whole bin dries by the air of the whole bin.
  const endPerFlow = endPer[FLOW] / list[FLOW].unit;
  const endSd = Math.hypot(sdOf(endPer), end.sd, PLACE_POINTS * place, endPerFlow * joined.placeSd);
  return {
    flowM3S: aroundLog(joined.mean, joined.sd),
    flowAtCables: aroundLog(flow.mean, Math.hypot(cablesSd, joined.usualSd)),
    flowOverCables: Math.exp(joined.place),
    moistureBiasPoints: around(bias.mean, Math.hypot(biasSd, bias.sd)),
    endMoistureWb: around((end.mean + endPerFlow * joined.place) / 100, endSd / 100),
  };
}

const aroundLog = (mean: number, sd: number) =>
  estimate(Math.exp(mean), Math.exp(mean - Z90 * sd), Math.exp(mean + Z90 * sd));
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
