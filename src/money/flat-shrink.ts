import { assertRange } from '../base/errors.ts';
import { WETTEST_WB, waterShrinkPerPoint } from './water-shrink.ts';

// Buyers' factors run from 1.2 to 1.5 % a point (common practice); 3 % would take double the water.
const MOST_PER_POINT = 0.03;

/**
 * Shrink by a buyer's flat factor: so much of the weight for each point above the base, nothing at or below it.
 *
 * @param moistureWb  as delivered, fraction, wet basis, 0 to 0.6
 * @param baseWb      the buyer's base moisture, fraction, wet basis, 0 to 0.6
 * @param perPoint    fraction of the wet weight per point, 0 to 0.03: 0.014 for 1.4 % a point
 * @returns           fraction of the wet weight
 * @throws            RangeError outside, on NaN and where the shrink would take more than the whole
 */
export function flatShrink(moistureWb: number, baseWb: number, perPoint: number): number {
  assertRange('moistureWb', moistureWb, 0, WETTEST_WB);
  assertRange('baseWb', baseWb, 0, WETTEST_WB);
  assertRange('perPoint', perPoint, 0, MOST_PER_POINT);
  const shrink = Math.max(0, moistureWb - baseWb) * 100 * perPoint;
  assertRange('flat shrink', shrink, 0, 1);
  return shrink;
}

/**
 * What a flat factor takes beyond the water, in the money of a wet bushel; negative where it takes less.
 *
 * @param pricePerBushel  money per bushel, 0 or more
 * @returns               money per wet bushel
 * @source                (flat factor - 1 / (1 - base)) x points x price
 * @throws                as `flatShrink`
 */
export function flatShrinkExcess(moistureWb: number, baseWb: number, perPoint: number, pricePerBushel: number): number {
  assertRange('pricePerBushel', pricePerBushel, 0, Number.MAX_VALUE);
  const water = Math.max(0, moistureWb - baseWb) * 100 * waterShrinkPerPoint(baseWb);
  return (flatShrink(moistureWb, baseWb, perPoint) - water) * pricePerBushel;
}
