import { withheld } from '../../base/estimate.ts';
import { overlap } from '../../base/overlap.ts';
import type { BinAirflow } from '../types.ts';
import type { BinModel } from './model-types.ts';

/**
 * A bin's airflow with that of its fitted bed beside those by fronts and pressure, where the bed is trusted. Which of them is used
 * stays as it was: on drawn bins with a known airflow the fit came nearer to it than the fronts in no more than half.
 */
export function airflowWithModel(airflow: BinAirflow, model: BinModel): BinAirflow {
  if (!model.trusted || model.flowM3S.value === null)
    return { ...airflow, byModel: withheld(model.trusted ? (model.flowM3S.why ?? model.why) : model.why) };
  const byModel = model.flowM3S;
  const ways = [byModel, airflow.byFront, airflow.byPressure].filter((one) => one.interval !== null);
  const agree = ways.length < 2 ? null : ways.every((a) => ways.every((b) => overlap(a, b) === true));
  return { ...airflow, byModel, agree: airflow.agree === false ? false : agree };
}
