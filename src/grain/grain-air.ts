import { humidityRatioOfVapour } from '../air/humidity-ratio.ts';
import { saturationLogSlope, saturationPressurePa } from '../air/saturation.ts';
import { assertRange } from '../base/errors.ts';
import { equilibriumHumidity } from './equilibrium.ts';
import type { Isotherm } from './isotherm.ts';
import { isothermHumidity, isothermHumidityPerMoisture, isothermLogHumiditySlope } from './isotherm-equations.ts';

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

/** Vapour pressure between the kernels, Pa: the kernel, no checks but that of the temperature, no allocation. */
export function grainVapourPressurePa(isotherm: Isotherm, tempC: number, moistureDb: number): number {
  const { equation, a, b, c } = isotherm;
  return isothermHumidity(equation, a, b, c, tempC, moistureDb) * saturationPressurePa(tempC);
}

/** How the humidity ratio rises with the logarithm of the vapour pressure, kg/kg. ashrae-2017, ch. 1, eq. 20, differentiated */
function ratioPerLogVapour(vapourPa: number, pressurePa: number): number {
  return (humidityRatioOfVapour(vapourPa, pressurePa) * pressurePa) / (pressurePa - vapourPa);
}

/**
 * How `grainHumidityRatio` rises with temperature at one moisture: its derivative, the kernel.
 *
 * @param moistureDb  fraction of dry matter
 * @returns           kg/kg for each K
 */
export function grainRatioPerK(isotherm: Isotherm, tempC: number, moistureDb: number, pressurePa: number): number {
  const { equation, a, b, c } = isotherm;
  const slope = saturationLogSlope(tempC) + isothermLogHumiditySlope(equation, a, b, c, tempC, moistureDb);
  return slope * ratioPerLogVapour(grainVapourPressurePa(isotherm, tempC, moistureDb), pressurePa);
}

/**
 * How `grainHumidityRatio` rises with moisture at one temperature: its derivative, the kernel.
 *
 * @param moistureDb  fraction of dry matter
 * @returns           kg/kg for a fraction of dry matter
 */
export function grainRatioPerMoisture(
  isotherm: Isotherm,
  tempC: number,
  moistureDb: number,
  pressurePa: number,
): number {
  const { equation, a, b, c } = isotherm;
  const saturationPa = saturationPressurePa(tempC);
  const vapourPa = isothermHumidity(equation, a, b, c, tempC, moistureDb) * saturationPa;
  const vapourPerMoisture = isothermHumidityPerMoisture(equation, a, b, c, tempC, moistureDb) * saturationPa;
  return (vapourPerMoisture / vapourPa) * ratioPerLogVapour(vapourPa, pressurePa);
}
