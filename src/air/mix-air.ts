import { assertRange } from '../base/errors.ts';
import { enthalpyJKg, tempOfEnthalpyC } from './enthalpy.ts';

/** Moist air by what keeps when it is warmed or mixed. */
export interface MoistAir {
  tempC: number;
  /** kg water per kg dry air */
  humidityRatio: number;
}

/**
 * Two streams of air mixed without heat from outside: water and enthalpy keep.
 *
 * @param one        first stream
 * @param oneKgS     its dry air, kg/s, >= 0
 * @param other      second stream
 * @param otherKgS   its dry air, kg/s, >= 0, not both 0
 * @returns          the mixture; may lie above saturation (fog), which is the caller's to see
 * @source           ashrae-2017, ch. 1, adiabatic mixing of two moist airstreams
 * @valid            -100 to 200 degC, humidity ratios 0 to 10; throws RangeError outside, on streams below 0 and on both 0
 */
export function mixAir(one: MoistAir, oneKgS: number, other: MoistAir, otherKgS: number): MoistAir {
  for (const [name, air] of [
    ['one', one],
    ['other', other],
  ] as const) {
    assertRange(`${name}.tempC`, air.tempC, -100, 200);
    assertRange(`${name}.humidityRatio`, air.humidityRatio, 0, 10);
  }
  assertRange('oneKgS', oneKgS, 0, 1e6);
  assertRange('otherKgS', otherKgS, 0, 1e6);
  assertRange('oneKgS + otherKgS', oneKgS + otherKgS, Number.MIN_VALUE, 2e6);
  const share = oneKgS / (oneKgS + otherKgS);
  const part = (a: number, b: number) => share * a + (1 - share) * b;
  const humidityRatio = part(one.humidityRatio, other.humidityRatio);
  const enthalpy = part(enthalpyJKg(one.tempC, one.humidityRatio), enthalpyJKg(other.tempC, other.humidityRatio));
  return { tempC: tempOfEnthalpyC(enthalpy, humidityRatio), humidityRatio };
}
