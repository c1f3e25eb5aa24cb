import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK } from '../../air/enthalpy.ts';
import { humidityRatioOfVapour } from '../../air/humidity-ratio.ts';
import { grainVapourPressurePa } from '../../grain/grain-air.ts';
import { heatOfVaporisationJKg } from '../../grain/heat-of-vaporisation.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';

/** Air that passes grain never comes out farther from its own temperature than this, K. */
const FARTHEST_K = 40;
/** Halvings: 80 K down to 1e-7 K. */
const HALVINGS = 30;

/**
 * Water that air can take from grain before it is in balance with it: the air cools as it dries the grain, by the heat that
 * takes the water out, and nothing else gives heat. Grain that takes up water gives a number below 0.
 *
 * @param tempC          of the air as it enters, degC; held within `isotherm.tempRangeC`
 * @param humidityRatio  of the air as it enters, kg/kg
 * @param moistureDb     of the grain, fraction of dry matter, 0.02 to 0.6
 * @param pressurePa     total pressure, Pa
 * @returns              kg water per kg dry air
 * @source               balance of heat and water of air and grain at rest; the steps of ashrae-2017, ch. 1, eq. 20 and 30
 */
export function airCanTake(
  isotherm: Isotherm,
  tempC: number,
  humidityRatio: number,
  moistureDb: number,
  pressurePa: number,
): number {
  const [coldest, hottest] = isotherm.tempRangeC;
  const within = (t: number) => Math.min(hottest, Math.max(coldest, t));
  const enters = within(tempC);
  const heatJKg = heatOfVaporisationJKg(isotherm, enters, wetFromDry(moistureDb));
  const airJKgK = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * humidityRatio;
  const gain = (t: number) =>
    humidityRatioOfVapour(grainVapourPressurePa(isotherm, within(t), moistureDb), pressurePa) - humidityRatio;
  let low = enters - FARTHEST_K;
  let high = enters + FARTHEST_K;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    // Warmer leaving air holds more water and has given less heat.
    if (airJKgK * (enters - middle) > heatJKg * gain(middle)) low = middle;
    else high = middle;
  }
  return gain((low + high) / 2);
}
