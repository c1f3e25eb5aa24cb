import { assertRange } from '../base/errors.ts';
import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK } from './enthalpy.ts';
import { saturationPressurePa } from './saturation.ts';

/**
 * Relative humidity of air that is warmed (or cooled, short of its dew point) at constant humidity ratio and pressure.
 *
 * @param tempC        before, degC
 * @param rh           before, over water, fraction, 0 to 1.1
 * @param deltaTempK   warming, K; below 0 cools
 * @returns            after, over water, fraction; above 1 where cooling went below the dew point
 * @source             ashrae-2017, ch. 1, eq. 12: the vapour pressure keeps
 * @valid              throws RangeError outside
 */
export function relativeHumidityWarmed(tempC: number, rh: number, deltaTempK: number): number {
  assertRange('rh', rh, 0, 1.1);
  return (rh * saturationPressurePa(tempC)) / saturationPressurePa(tempC + deltaTempK);
}

/**
 * Warming of a stream of air by heat that goes into it.
 *
 * @param heatW          W
 * @param dryAirKgS      dry air, kg/s, > 0
 * @param humidityRatio  kg water per kg dry air, 0 to 1
 * @returns              K
 * @source               ashrae-2017, ch. 1, eq. 30, at constant humidity ratio
 * @valid                throws RangeError outside
 */
export function warmingK(heatW: number, dryAirKgS: number, humidityRatio: number): number {
  assertRange('heatW', heatW, -1e8, 1e8);
  assertRange('dryAirKgS', dryAirKgS, 1e-9, 1e6);
  assertRange('humidityRatio', humidityRatio, 0, 1);
  return heatW / (dryAirKgS * (HEAT_DRY_AIR_J_KGK + humidityRatio * HEAT_VAPOUR_J_KGK));
}
