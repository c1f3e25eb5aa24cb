import { assertRange } from '../base/errors.ts';
import { saturationPressurePa } from './saturation.ts';

/** Molar mass of water over that of dry air. ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 20 */
const WATER_PER_DRY_AIR = 0.621945;

/**
 * Humidity ratio of moist air from its vapour pressure: the kernel, no checks.
 *
 * @param vapourPressurePa  partial pressure of water vapour, Pa
 * @param pressurePa        total pressure, Pa
 * @returns                 kg water per kg dry air
 * @source                  ashrae-2017, ch. 1, eq. 20 (ideal gas; tables of the real gas lie 0.4 to 0.6 % higher)
 */
export function humidityRatioOfVapour(vapourPressurePa: number, pressurePa: number): number {
  return (WATER_PER_DRY_AIR * vapourPressurePa) / (pressurePa - vapourPressurePa);
}

/**
 * Vapour pressure from the humidity ratio: eq. 20 solved for the vapour pressure; the kernel, no checks.
 *
 * @returns  Pa
 * @source   ashrae-2017, ch. 1, eq. 20
 */
export function vapourPressurePa(humidityRatio: number, pressurePa: number): number {
  return (pressurePa * humidityRatio) / (WATER_PER_DRY_AIR + humidityRatio);
}

/**
 * Humidity ratio of air of a temperature and relative humidity.
 *
 * @param tempC       air temperature, degC, -80 to 200
 * @param rh          relative humidity over water, fraction, 0 to 1.1
 * @param pressurePa  total pressure, Pa, 30000 to 120000
 * @param saturation  `saturationPressureOverIcePa` for a humidity stated over ice; over water else
 * @returns           kg water per kg dry air
 * @source            ashrae-2017, ch. 1, eq. 12 and 20
 * @valid             vapour pressure below the total; throws RangeError outside
 */
export function humidityRatio(
  tempC: number,
  rh: number,
  pressurePa: number,
  saturation: (tempC: number) => number = saturationPressurePa,
): number {
  assertRange('rh', rh, 0, 1.1);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  const vapour = rh * saturation(tempC);
  assertRange('vapourPressurePa', vapour, 0, 0.99 * pressurePa);
  return humidityRatioOfVapour(vapour, pressurePa);
}

/**
 * Relative humidity from the humidity ratio.
 *
 * @param tempC          air temperature, degC, -80 to 200
 * @param humidityRatio  kg water per kg dry air, 0 to 10
 * @param pressurePa     total pressure, Pa, 30000 to 120000
 * @param saturation     `saturationPressureOverIcePa` for a humidity over ice; over water else
 * @returns              fraction; above 1 where the air could not hold the water
 * @source               ashrae-2017, ch. 1, eq. 12 and 20
 * @valid                throws RangeError outside
 */
export function relativeHumidityOfRatio(
  tempC: number,
  humidityRatio: number,
  pressurePa: number,
  saturation: (tempC: number) => number = saturationPressurePa,
): number {
  assertRange('humidityRatio', humidityRatio, 0, 10);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  return vapourPressurePa(humidityRatio, pressurePa) / saturation(tempC);
}
