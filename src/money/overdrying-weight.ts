import { assertRange } from '../base/errors.ts';
import { WETTEST_WB } from './water-shrink.ts';

/**
 * Saleable weight lost because grain ended drier than the market's base: the kernel, no checks.
 *
 * @param dryMatter  of the grain, in any unit of weight
 * @param baseWb     moisture of the market base, fraction, wet basis
 * @param endWb      moisture at the end, fraction, wet basis
 * @returns          in the unit of `dryMatter`; 0 where the grain ended wetter
 * @source           conservation of dry matter; unl-2017-optimum-moisture
 */
export function overdryingWeight(dryMatter: number, baseWb: number, endWb: number): number {
  return Math.max(0, dryMatter / (1 - baseWb) - dryMatter / (1 - endWb));
}

/**
 * The same as a share of the weight that the grain would have had at the base: 1 - (1 - base) / (1 - end).
 *
 * @returns  fraction; times the price it is the loss in money per bushel at the base
 * @throws   RangeError for moistures outside 0 to 0.6 and on NaN
 */
export function overdryingFraction(baseWb: number, endWb: number): number {
  assertRange('baseWb', baseWb, 0, WETTEST_WB);
  assertRange('endWb', endWb, 0, WETTEST_WB);
  return overdryingWeight(1 - baseWb, baseWb, endWb);
}
