import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import type { BinLog } from './bin-log.ts';
import type { Fit, Model } from './fit-bin.ts';
import { BIAS, FIRST_CABLE, type FitParameters, FLOW } from './fit-parameters.ts';
import { betweenCablesSd, binEndSd, nearestBetween } from './grain-between.ts';
import { joinedFlow } from './joined-flow.ts';
import type { PaperMoistures } from './paper-moistures.ts';
import { residualSlopes, slopesOf, standardErrors } from './standard-errors.ts';

/** Dry matter of the grain, to which a fitted airflow is in proportion: by tickets, and by depth, test weight and packing. */
const WEIGHED_REL_SD = 0.015;
const MEASURED_REL_SD = 0.03;
/** How much less a cost counts than if the bed left nothing out but chance. */
const TEMPER = 2;

export interface FitIntervals {
  /** of the whole bin */
  flowM3S: Estimate;
  /** by the grain at the cables and what is usual of their place, without static pressure */
  flowAtCables: Estimate;
  /** airflow of the bin over that at its cables */
  flowOverCables: number;
  /** its standard error, relative */
  placeSd: number;
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
  papers: PaperMoistures,
): FitIntervals {
  const [best] = finals;
  const slopes = residualSlopes(best.model, best.fit, parameters);
  const sdOf = standardErrors(slopes);
  const { list } = parameters;
  const flowPer = list.map(({ unit }, k) => {
    if (k === FLOW) return unit;
    return k < FIRST_CABLE ? 0 : unit * log.cables[k - FIRST_CABLE].share * best.fit.cableFlows[k - FIRST_CABLE];
  });
  const weights = finals.map(({ fit }) => weightOf(fit, best.fit));
  const flow = spread(
    finals.map(({ fit }) => Math.log(fit.flowM3S)),
    weights,
  );
  const bias = spread(
    finals.map(({ fit }) => 100 * fit.moistureBiasWb),
    weights,
  );
  const biasSd = sdOf(list.map(({ unit }, k) => (k === BIAS ? 100 * unit : 0)));
  // What the grain's heat leaves open is in the fit's own slopes.
  const grain = log.review.grain.from === 'tickets' ? WEIGHED_REL_SD : MEASURED_REL_SD;
  const cablesSd = Math.hypot(sdOf(flowPer), flow.sd, grain);
  const joined = joinedFlow(log, flow.mean, cablesSd);
  const startPer = slopesOf(best.fit, parameters, best.model.startWb);
  const endPer = slopesOf(best.fit, parameters, best.model.endWb);
  // The whole bin dries by the air of the whole bin.
  const endPerFlow = endPer[FLOW] / list[FLOW].unit;
  const between = {
    filled: { mean: 0, sd: betweenCablesSd(log) },
    aired: { mean: endPerFlow * joined.place, sd: Math.abs(endPerFlow) * joined.placeSd },
  };
  const end = spread(
    finals.map(({ fit: { values }, model }) => {
      const endWb = model.endWb(values);
      return endWb + nearestBetween(between, model.startWb(values), endWb, papers);
    }),
    weights,
  );
  const endSd = Math.hypot(end.sd, binEndSd(slopes, startPer, endPer, between, papers));
  return {
    flowM3S: aroundLog(joined.mean, joined.sd),
    flowAtCables: aroundLog(joined.alone.mean, joined.alone.sd),
    flowOverCables: Math.exp(joined.place),
    placeSd: joined.placeSd,
    moistureBiasPoints: around(bias.mean, Math.hypot(biasSd, bias.sd)),
    endMoistureWb: around(end.mean, endSd),
  };
}

/** How much a fit weighs beside the best: exp(-cost / 2), tempered. */
export const weightOf = (fit: Fit, best: Fit) => Math.exp((best.cost - fit.cost) / 2 / TEMPER);

const aroundLog = (mean: number, sd: number) =>
  estimate(Math.exp(mean), Math.exp(mean - Z90 * sd), Math.exp(mean + Z90 * sd));
const around = (value: number, sd: number) => estimate(value, value - Z90 * sd, value + Z90 * sd);

function spread(values: readonly number[], weights: readonly number[]): { mean: number; sd: number } {
  const all = weights.reduce((sum, one) => sum + one, 0);
  const mean = values.reduce((sum, one, i) => sum + weights[i] * one, 0) / all;
  return { mean, sd: Math.sqrt(values.reduce((sum, one, i) => sum + weights[i] * (one - mean) ** 2, 0) / all) };
}
