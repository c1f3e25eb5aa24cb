import { type Estimate, withheld } from '../../base/estimate.ts';
import type { Bin } from '../../season/season.ts';
import { fillTimes } from './fill-times.ts';

/** Why numbers that hang on one grain are not told of a bin that was filled twice. */
export const REFILLED_WHY =
  'The bin was filled again after grain had been taken out: fan hours and costs are those of both fillings, moistures, bushels and points of the first.';

/** Was the bin filled again after grain had been taken out? */
export const wasRefilled = (bin: Bin): boolean => fillTimes(bin).refilledMs !== undefined;

/** Fan hours, energy or cost to be set against a grain: withheld where they are those of two. */
export function ofOneFilling(of: Estimate, bin: Bin): Estimate {
  return wasRefilled(bin) ? withheld(of.why ?? REFILLED_WHY) : of;
}
