import { enthalpyJKg } from '../air/enthalpy.ts';
import { assertRange } from '../base/errors.ts';
import { halve } from '../base/halve.ts';
import { grainHumidityRatio } from '../grain/grain-air.ts';
import type { Isotherm } from '../grain/isotherm.ts';

/**
 * Temperature that grain takes behind a front: of the entering air once it has come into balance with the grain's moisture at
 * constant enthalpy, in the slow drying (or wetting) zone near the inlet. Dry air makes it colder than itself, damp air warmer.
 *
 * @param isotherm    from `isothermOf`
 * @param tempC       of the entering air, with the fan's warming, degC, within `isotherm.tempRangeC`
 * @param humidity    humidity ratio of the entering air, kg/kg, 0 to 0.1
 * @param moistureWb  of the grain, fraction, wet basis, 0.05 to 0.4
 * @param pressurePa  total pressure, Pa, 30000 to 120000
 * @returns           degC
 * @source            sutherland-1971 (the dwell state); the heat that binds water to grain, small beside that of vaporisation, is left out
 * @valid             throws RangeError outside, and where no temperature within the isotherm's fits
 */
export function frontPlateauC(
  isotherm: Isotherm,
  tempC: number,
  humidity: number,
  moistureWb: number,
  pressurePa: number,
): number {
  assertRange('tempC', tempC, ...isotherm.tempRangeC);
  assertRange('humidityRatio', humidity, 0, 0.1);
  assertRange('moistureWb', moistureWb, 0.05, 0.4);
  const target = enthalpyJKg(tempC, humidity);
  const at = (t: number) => enthalpyJKg(t, grainHumidityRatio(isotherm, t, moistureWb, pressurePa));
  const [low, high] = isotherm.tempRangeC;
  assertRange('enthalpy of the entering air, J/kg,', target, at(low), at(high));
  return halve(low, high, (middle) => at(middle) < target);
}
