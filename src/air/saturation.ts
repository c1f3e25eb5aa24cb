import { assertRange } from '../base/errors.ts';

const ZERO_C_K = 273.15;

/**
 * Saturation vapour pressure over liquid water, also over supercooled water: humidity sensors and weather services
 * state relative humidity over water below freezing too (WMO-No. 8, Guide to Instruments and Methods of Observation, annex 4.B).
 *
 * @param tempC  temperature, degC
 * @returns      Pa
 * @source       ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 6 (Hyland and Wexler 1983)
 * @valid        0 to 200 degC; below 0 extended to -80 degC for supercooled water (0.1 % off WMO's formula at -20 degC); throws RangeError outside
 */
export function saturationPressurePa(tempC: number): number {
  assertRange('tempC', tempC, -80, 200);
  const t = tempC + ZERO_C_K;
  // Powers as products: this runs in every loop, and a power costs as much as the logarithm.
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 +
      t * (-4.8640239e-2 + t * (4.1764768e-5 - 1.4452093e-8 * t)) +
      6.5459673 * Math.log(t),
  );
}

/**
 * How fast the logarithm of `saturationPressurePa` rises with temperature: its derivative, the kernel, no checks.
 *
 * @returns  1/K
 * @source   ashrae-2017, ch. 1, eq. 6, differentiated
 */
export function saturationLogSlope(tempC: number): number {
  const t = tempC + ZERO_C_K;
  return 5.8002206e3 / t ** 2 - 4.8640239e-2 + 8.3529536e-5 * t - 4.3356279e-8 * t ** 2 + 6.5459673 / t;
}

/**
 * Saturation vapour pressure over ice.
 *
 * @param tempC  temperature, degC
 * @returns      Pa
 * @source       ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 5 (Hyland and Wexler 1983)
 * @valid        -100 to 0.01 degC; throws RangeError outside
 */
export function saturationPressureOverIcePa(tempC: number): number {
  assertRange('tempC', tempC, -100, 0.01);
  const t = tempC + ZERO_C_K;
  return Math.exp(
    -5.6745359e3 / t +
      6.3925247 -
      9.677843e-3 * t +
      6.2215701e-7 * t ** 2 +
      2.0747825e-9 * t ** 3 -
      9.484024e-13 * t ** 4 +
      4.1635019 * Math.log(t),
  );
}
