import { type Estimate, withheld } from '../../base/estimate.ts';
import type { BinReview, MomentMean } from '../types.ts';
import type { BinConditions, FillAir } from './comparison.ts';

/** What stood beside a bin's cost; everything but the air is worked out elsewhere. */
export function binConditions(review: BinReview, air: FillAir): BinConditions {
  const { moisture, temperature } = review;
  return {
    airflowCfmPerBushel: airflowOf(review),
    startWb: momentOf(moisture.start, moisture.why),
    endWb: momentOf(moisture.end, moisture.why),
    startC: momentOf(temperature.start, temperature.why),
    endC: momentOf(temperature.end, temperature.why),
    air,
  };
}

function momentOf({ value, interval }: MomentMean, why: string | null): Estimate {
  return value === null ? withheld(why ?? 'Not known.') : { value, interval: interval ?? null, why: null };
}

/** cfm per bushel, where an analysis of the airflow has told it. */
function airflowOf(review: BinReview): Estimate {
  return review.airflow?.cfmPerBushel ?? withheld('The airflow of this bin is not worked out.');
}
