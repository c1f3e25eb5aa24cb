import { BUSHEL_M3 } from '../../base/bushel.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { cfmPerBushel } from '../../bin/specific-airflow.ts';
import type { BinAirflow, BinGrainAmount } from '../types.ts';
import type { BinModel } from './model-types.ts';

/**
 * A bin's airflow with that of its fitted bed joined to those by fronts and pressure. A bed that is trusted tells the airflow; of one that is
 * not, none is told.
 */
export function airflowWithModel(airflow: BinAirflow, grain: BinGrainAmount, model: BinModel): BinAirflow {
  if (!model.trusted || model.flowM3S.value === null) return { ...airflow, byModel: withheld(model.why) };
  const byModel = model.flowM3S;
  const ways = [byModel, airflow.byFront, airflow.byPressure].filter((one) => one.interval !== null);
  const agree = ways.length < 2 ? null : ways.every((a) => ways.every((b) => overlap(a, b)));
  return {
    ...airflow,
    byModel,
    from: 'model',
    flowM3S: byModel,
    cfmPerBushel: perBushel(byModel, grain),
    agree: airflow.agree === false ? false : agree,
    why: null,
  };
}

function overlap({ interval: a }: Estimate, { interval: b }: Estimate): boolean {
  return a !== null && b !== null && a[0] <= b[1] && b[0] <= a[1];
}

function perBushel({ value, interval }: Estimate, { volumeBushels }: BinGrainAmount): Estimate {
  if (value === null || interval === null || volumeBushels === null) {
    return withheld('The volume of the grain is not known.');
  }
  const per = (flowM3S: number) => cfmPerBushel(flowM3S, volumeBushels * BUSHEL_M3);
  return { value: per(value), interval: [per(interval[0]), per(interval[1])], why: null };
}
