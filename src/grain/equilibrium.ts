import { assertRange } from '../base/errors.ts';
import type { Isotherm } from './isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from './isotherm-equations.ts';
import { dryFromWet, wetFromDry } from './moisture-basis.ts';

/** Humidities between which the equations were fitted and behave; Halsey has no end above, Chung-Pfost turns negative below. */
export const EQUILIBRIUM_RH_RANGE = [0.1, 0.95] as const;

/**
 * Moisture at which grain neither takes nor gives water in air of this temperature and humidity.
 *
 * @param isotherm  from `isothermOf`
 * @param tempC     of air and grain, degC, within `isotherm.tempRangeC`
 * @param rh        relative humidity over water, fraction, 0 to 1; held at 0.10 below and at 0.95 above
 * @returns         fraction, wet basis
 * @source          of the constants: `isotherm.sourceKey`
 * @valid           throws RangeError outside, and where the equation gives no water at all (Chung-Pfost in hot, dry air)
 */
export function equilibriumMoistureWb(isotherm: Isotherm, tempC: number, rh: number): number {
  assertRange('tempC', tempC, ...isotherm.tempRangeC);
  assertRange('rh', rh, 0, 1);
  const held = Math.min(Math.max(rh, EQUILIBRIUM_RH_RANGE[0]), EQUILIBRIUM_RH_RANGE[1]);
  const { equation, a, b, c } = isotherm;
  const moistureDb = isothermMoistureDb(equation, a, b, c, tempC, held);
  if (!(moistureDb > 0)) {
    throw new RangeError(`${isotherm.name} for ${isotherm.crop} gives no moisture above 0 at ${tempC} degC and ${rh}.`);
  }
  return wetFromDry(moistureDb);
}

/**
 * Humidity of the air that grain of this moisture holds between its kernels.
 *
 * @param isotherm    from `isothermOf`
 * @param tempC       of air and grain, degC, within `isotherm.tempRangeC`
 * @param moistureWb  fraction, wet basis, 0.01 to 0.6
 * @returns           fraction; not held at the ends: outside 0.10 to 0.95 the equation speaks beyond its data
 * @source            of the constants: `isotherm.sourceKey`
 * @valid             throws RangeError outside
 */
export function equilibriumHumidity(isotherm: Isotherm, tempC: number, moistureWb: number): number {
  assertRange('tempC', tempC, ...isotherm.tempRangeC);
  assertRange('moistureWb', moistureWb, 0.01, 0.6);
  const { equation, a, b, c } = isotherm;
  return isothermHumidity(equation, a, b, c, tempC, dryFromWet(moistureWb));
}
