import { humidityRatioOfVapour } from '../air/humidity-ratio.ts';
import { saturationPressurePa } from '../air/saturation.ts';
import { assertRange } from '../base/errors.ts';
import { equilibriumHumidity } from './equilibrium.ts';
import type { Isotherm } from './isotherm.ts';

/**
 * Humidity ratio of the air that lies in balance with grain: what air carries off that has passed enough of it.
 *
 * @param isotherm    from `isothermOf`
 * @param tempC       of air and grain, degC, within `isotherm.tempRangeC`
 * @param moistureWb  fraction, wet basis, 0.01 to 0.6
 * @param pressurePa  total pressure, Pa, 30000 to 120000
 * @returns           kg water per kg dry air; humidity over water also in frost
 * @source            of the constants: `isotherm.sourceKey`; ashrae-2017, ch. 1, eq. 6, 12 and 20
 * @valid             throws RangeError outside
 */
export function grainHumidityRatio(isotherm: Isotherm, tempC: number, moistureWb: number, pressurePa: number): number {
  assertRange('pressurePa', pressurePa, 30000, 120000);
  const rh = equilibriumHumidity(isotherm, tempC, moistureWb);
  return humidityRatioOfVapour(rh * saturationPressurePa(tempC), pressurePa);
}
