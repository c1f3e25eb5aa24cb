import { assertRange } from '../base/errors.ts';
import type { Isotherm } from './isotherm.ts';
import { isothermLogHumiditySlope } from './isotherm-equations.ts';
import { dryFromWet } from './moisture-basis.ts';

/** J/(kg K) */
export const GAS_WATER_J_KGK = 461.5; // specific gas constant of water vapour: 8.314 J/(mol K) over 0.018015 kg/mol

/**
 * Heat of vaporisation of free water.
 *
 * @param tempC  degC
 * @returns      J/kg
 * @source       straight line through the steam tables, 0 to 60 degC; memory
 */
export function heatOfVaporisationFreeJKg(tempC: number): number {
  return 2501e3 - 2364 * tempC;
}

/**
 * Heat that takes a kilogram of water out of grain: that of free water and what the isotherm says binds it
 * (Clausius and Clapeyron: R T^2 times the slope of ln RH at one moisture), so that it fits the isotherm in use.
 *
 * @param isotherm    from `isothermOf`
 * @param tempC       degC, within `isotherm.tempRangeC`
 * @param moistureWb  fraction, wet basis, 0.01 to 0.6
 * @returns           J per kg of water
 * @source            method: Rodriguez-Arias, Hall and Bakker-Arkema 1963, rodriguez-arias-1963
 * @valid             throws RangeError outside
 */
export function heatOfVaporisationJKg(isotherm: Isotherm, tempC: number, moistureWb: number): number {
  assertRange('tempC', tempC, ...isotherm.tempRangeC);
  assertRange('moistureWb', moistureWb, 0.01, 0.6);
  const { equation, a, b, c } = isotherm;
  const slope = isothermLogHumiditySlope(equation, a, b, c, tempC, dryFromWet(moistureWb));
  return heatOfVaporisationFreeJKg(tempC) + GAS_WATER_J_KGK * (tempC + 273.15) ** 2 * slope;
}
