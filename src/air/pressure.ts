import { assertRange } from '../base/errors.ts';
import { GAS_DRY_AIR_J_KGK } from './volume.ts';

/**
 * Pressure of the standard atmosphere at an elevation.
 *
 * @param elevationM  above sea level, m
 * @returns           Pa
 * @source            ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 3
 * @valid             -5000 to 11000 m; throws RangeError outside
 */
export function standardPressurePa(elevationM: number): number {
  assertRange('elevationM', elevationM, -5000, 11000);
  return 101325 * (1 - 2.25577e-5 * elevationM) ** 5.2559;
}

const GRAVITY_M_S2 = 9.80665; // standard gravity, CGPM 1901
const LAPSE_K_M = 0.0065; // International Standard Atmosphere, ISO 2533:1975

/** Sea-level pressures that weather has; the records are 87000 and 108500 Pa. */
export const SEA_LEVEL_RANGE_PA: readonly [low: number, high: number] = [85000, 110000];
/** Air temperatures that weather has, degC. */
export const STATION_TEMP_RANGE_C: readonly [low: number, high: number] = [-90, 60];

/**
 * Station pressure from the pressure reduced to sea level: the weight of the column of air between them, at its mean temperature.
 *
 * @param seaLevelPa  pressure reduced to sea level, Pa, within `SEA_LEVEL_RANGE_PA`
 * @param elevationM  of the station, m, -500 to 5000
 * @param tempC       air temperature at the station, degC, within `STATION_TEMP_RANGE_C`; NaN, a missing reading: the ratio of the standard atmosphere, within 1.3 % up to 500 m between -30 and 40 degC
 * @returns           Pa
 * @source            hypsometric equation, e.g. WMO-No. 8 (2018), vol. I, ch. 3, 3.7; the column's temperature by the standard lapse rate
 * @valid             throws RangeError outside
 */
export function stationPressurePa(seaLevelPa: number, elevationM: number, tempC: number): number {
  assertRange('seaLevelPa', seaLevelPa, ...SEA_LEVEL_RANGE_PA);
  assertRange('elevationM', elevationM, -500, 5000);
  if (Number.isNaN(tempC)) return (seaLevelPa * standardPressurePa(elevationM)) / 101325;
  assertRange('tempC', tempC, ...STATION_TEMP_RANGE_C);
  const columnK = tempC + 273.15 + (LAPSE_K_M * elevationM) / 2;
  return seaLevelPa * Math.exp((-GRAVITY_M_S2 * elevationM) / (GAS_DRY_AIR_J_KGK * columnK));
}
