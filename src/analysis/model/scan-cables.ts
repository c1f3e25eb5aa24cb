import type { Model } from './fit-bin.ts';
import { FIRST_CABLE, type FitParameters } from './fit-parameters.ts';
import { costOf } from './solve-fit.ts';

/** A cable's airflow over the bin's that is tried: where fines gather it may have a fifth, and between the two no step by slopes leads down. */
const TRIED = [0.15, 0.22, 0.33, 0.5, 0.7, 1.4, 2];

/**
 * A fit's values with each cable's airflow moved to where it fits clearly better, one cable after another: a cable that the front comes
 * to days late lies beyond a ridge that least squares by slopes do not cross.
 *
 * @returns  the values themselves where no cable fits better elsewhere
 */
export function scanCables(model: Model, { list }: FitParameters, values: readonly number[]): readonly number[] {
  let best = values;
  let cost = costOf(model, values);
  for (let k = FIRST_CABLE; k < list.length; k++) {
    for (const factor of TRIED) {
      const { unit, low, high } = list[k];
      const moved = [...best];
      moved[k] = Math.min(high, Math.max(low, Math.log(factor) / unit));
      const found = costOf(model, moved);
      if (!(found < cost)) continue;
      best = moved;
      cost = found;
    }
  }
  return best;
}
