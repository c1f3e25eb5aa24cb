import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { saturationPressurePa } from './saturation.ts';

/** Where the curve of saturation over water ends. */
const COLDEST_C = -80;

/**
 * Relative humidity over water from the dew point.
 *
 * @param tempC      air temperature, degC, -80 to 200
 * @param dewPointC  dew point (over water, also below freezing), degC, -80 to 200
 * @returns          fraction; above 1 when the dew point is above the temperature (a fault of the reading, left to the reader)
 * @source           ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 12 and 36: phi = pw / pws(t), pw = pws(td)
 */
export function relativeHumidity(tempC: number, dewPointC: number): number {
  return saturationPressurePa(dewPointC) / saturationPressurePa(tempC);
}

/**
 * Dew point over water from relative humidity: eq. 6 of `saturationPressurePa` solved for the temperature.
 *
 * @param tempC  air temperature, degC, -60 to 150
 * @param rh     relative humidity over water, fraction, 0.001 to 1.1
 * @returns      degC; NaN, which is missing in the kit's tables, where it lies below -80 degC, the end of the curve of saturation
 * @source       ASHRAE Handbook - Fundamentals (2017), ch. 1: dew point as the solution of pws(td) = pw
 * @valid        throws RangeError outside
 */
export function dewPointC(tempC: number, rh: number): number {
  assertRange('tempC', tempC, -60, 150);
  assertRange('rh', rh, 0.001, 1.1);
  const target = Math.log(rh * saturationPressurePa(tempC));
  // The curve rises without a bend of its own, so halving cannot miss.
  const isBelow = (middle: number) => Math.log(saturationPressurePa(middle)) < target;
  return target < Math.log(saturationPressurePa(COLDEST_C))
    ? Number.NaN
    : halve(COLDEST_C, Math.min(200, tempC + 5), isBelow);
}
