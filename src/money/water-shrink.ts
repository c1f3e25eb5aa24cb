import { assertRange } from '../base/errors.ts';

/** Wetter than any grain that is traded; beyond it the input is a slip, most often percent for a fraction. */
export const WETTEST_WB = 0.6;

/**
 * Share of the wet weight that leaves as water when grain is dried.
 *
 * @param fromWb  moisture before, fraction, wet basis, 0 to 0.6
 * @param toWb    moisture after, fraction, wet basis, 0 to fromWb
 * @returns       fraction of the weight before
 * @source        conservation of dry matter: (Mi - Mf) / (1 - Mf); National Corn Handbook NCH-61
 * @throws        RangeError outside, on NaN and where `toWb` is the wetter
 */
export function waterShrink(fromWb: number, toWb: number): number {
  assertRange('fromWb', fromWb, 0, WETTEST_WB);
  assertRange('toWb', toWb, 0, fromWb);
  return (fromWb - toWb) / (1 - toWb);
}

/**
 * Share of the wet weight that leaves as water with each point of moisture.
 *
 * @param toWb  moisture after, fraction, wet basis, 0 to 0.6
 * @returns     fraction of the weight before, per point: 0.01176 at 15 %
 * @source      as `waterShrink`
 */
export function waterShrinkPerPoint(toWb: number): number {
  assertRange('toWb', toWb, 0, WETTEST_WB);
  return 0.01 / (1 - toWb);
}
