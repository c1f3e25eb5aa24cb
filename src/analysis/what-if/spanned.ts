import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { NO_PRICE } from './what-if-types.ts';

/** Money in the bin as fitted, with the lowest and highest of all that it may be. @param values  [runs], money, the bin as fitted first; NaN: no price is known */
export function spanned(values: readonly number[]): Estimate {
  return Number.isNaN(values[0]) ? withheld(NO_PRICE) : estimate(values[0], Math.min(...values), Math.max(...values));
}
