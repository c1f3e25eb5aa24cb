import { assertRange } from '../base/errors.ts';
import { waterShrink } from './water-shrink.ts';

/**
 * Water removed by drying, from the wet weight.
 *
 * @param wetKg   weight before, kg, 0 or more
 * @param fromWb  moisture before, fraction, wet basis
 * @param toWb    moisture after, fraction, wet basis, not above `fromWb`
 * @returns       kg
 * @throws        as `waterShrink`; RangeError on a weight below 0 or NaN
 */
export function waterRemovedKg(wetKg: number, fromWb: number, toWb: number): number {
  assertRange('wetKg', wetKg, 0, Number.MAX_VALUE);
  return wetKg * waterShrink(fromWb, toWb);
}

/**
 * Money or energy for each kilogram of water removed.
 *
 * @param amount   money, J or kWh
 * @param waterKg  kg, above 0: where no water left there is no such number
 * @returns        amount per kg
 * @throws         RangeError on NaN, on an infinite amount and where no water was removed
 */
export function perWaterKg(amount: number, waterKg: number): number {
  assertRange('amount', amount, -Number.MAX_VALUE, Number.MAX_VALUE);
  assertRange('waterKg', waterKg, Number.MIN_VALUE, Number.MAX_VALUE);
  return amount / waterKg;
}
