import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK, VAPORISATION_0C_J_KG } from './enthalpy.ts';
import { humidityRatioOfVapour } from './humidity-ratio.ts';
import { saturationPressureOverIcePa, saturationPressurePa } from './saturation.ts';

// ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 33 (water) and 35 (ice): heat of the bulb's water at 0 degC and its slopes.
const HEAT_WATER_J_KGK = 4186;
const VAPORISATION_SLOPE_J_KGK = 2326;
const SUBLIMATION_0C_J_KG = 2.83e6;
const SUBLIMATION_SLOPE_J_KGK = 240;
const HEAT_ICE_J_KGK = 2100;

/** What covers the bulb. Ice is never taken by itself: in light frost a bulb may carry either. */
export type BulbCover = 'water' | 'ice';

/**
 * Humidity ratio from the readings of a dry and a wet bulb.
 *
 * @param tempC       dry bulb, degC, -60 to 100
 * @param wetBulbC    wet bulb, degC, not above the dry bulb; not above 0 with ice
 * @param pressurePa  total pressure, Pa, 30000 to 120000
 * @param cover       water (also supercooled) by default, or ice
 * @returns           kg water per kg dry air; below 0 where the two readings cannot belong together
 * @source            ashrae-2017, ch. 1, eq. 33 and 35
 * @valid             throws RangeError outside
 */
export function humidityRatioOfWetBulb(
  tempC: number,
  wetBulbC: number,
  pressurePa: number,
  cover: BulbCover = 'water',
): number {
  assertRange('tempC', tempC, -60, 100);
  assertRange('wetBulbC', wetBulbC, -70, cover === 'ice' ? Math.min(tempC, 0) : tempC);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  return cover === 'ice' ? iceBulb(tempC, wetBulbC, pressurePa) : waterBulb(tempC, wetBulbC, pressurePa);
}

function waterBulb(t: number, wet: number, pressurePa: number): number {
  const saturated = humidityRatioOfVapour(saturationPressurePa(wet), pressurePa);
  return (
    ((VAPORISATION_0C_J_KG - VAPORISATION_SLOPE_J_KGK * wet) * saturated - HEAT_DRY_AIR_J_KGK * (t - wet)) /
    (VAPORISATION_0C_J_KG + HEAT_VAPOUR_J_KGK * t - HEAT_WATER_J_KGK * wet)
  );
}

function iceBulb(t: number, wet: number, pressurePa: number): number {
  const saturated = humidityRatioOfVapour(saturationPressureOverIcePa(wet), pressurePa);
  return (
    ((SUBLIMATION_0C_J_KG - SUBLIMATION_SLOPE_J_KGK * wet) * saturated - HEAT_DRY_AIR_J_KGK * (t - wet)) /
    (SUBLIMATION_0C_J_KG + HEAT_VAPOUR_J_KGK * t - HEAT_ICE_J_KGK * wet)
  );
}

/**
 * Wet-bulb temperature, by halving between a bulb in bone-dry air and the dry bulb.
 *
 * @param tempC          dry bulb, degC, -60 to 100
 * @param humidityRatio  kg water per kg dry air, 0 to saturation
 * @param pressurePa     total pressure, Pa, 30000 to 120000
 * @param cover          water (also supercooled) by default, or ice
 * @returns              degC
 * @source               ashrae-2017, ch. 1, eq. 33 and 35, solved for the wet bulb
 * @valid                throws RangeError outside: above saturation there is no wet bulb, nor an ice bulb above 0 degC
 */
export function wetBulbC(tempC: number, humidityRatio: number, pressurePa: number, cover: BulbCover = 'water'): number {
  assertRange('tempC', tempC, -60, 100);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  const bulb = cover === 'ice' ? iceBulb : waterBulb;
  const high = cover === 'ice' ? Math.min(tempC, 0) : tempC;
  const low = Math.max(-70, tempC - 80);
  const most = bulb(tempC, high, pressurePa);
  // A hair above saturation is rounding of whoever worked the ratio out.
  assertRange('humidityRatio', humidityRatio, Math.max(0, bulb(tempC, low, pressurePa)), most * (1 + 1e-9));
  return halve(low, high, (middle) => bulb(tempC, middle, pressurePa) < humidityRatio);
}
