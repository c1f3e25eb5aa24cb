import { assertRange } from '../base/errors.ts';
import { waterShrink } from './water-shrink.ts';

/**
 * Water shrink and what handling loses (fines, dust, dry matter breathed off), both counted on the wet weight and added
 * up, as shrink tables do.
 *
 * @param fromWb    moisture before, fraction, wet basis
 * @param toWb      moisture after, fraction, wet basis
 * @param handling  fraction of the weight before, 0 to 0.05; 0.005 in common tables, 0.0022 to 0.0171 measured on farms
 *                  (Iowa State University, A2-32)
 * @returns         fraction of the weight before
 * @throws          RangeError outside, on NaN and where `toWb` is the wetter
 */
export function waterAndHandlingShrink(fromWb: number, toWb: number, handling: number): number {
  assertRange('handling', handling, 0, 0.05);
  return waterShrink(fromWb, toWb) + handling;
}
