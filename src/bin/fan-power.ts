import { HEAT_DRY_AIR_J_KGK } from '../air/enthalpy.ts';
import { assertRange } from '../base/errors.ts';

/** Mechanical horsepower, 550 ft lbf/s, W. NIST SP 811 */
export const HP_W = 745.6998715822702;
/** Dry air to steam: what is given in other units falls outside. */
const HEAT_RANGE_J_KGK = [900, 2000] as const;

/**
 * Power that air takes up as pressure and flow.
 *
 * @param pressurePa  static pressure, Pa, >= 0
 * @param flowM3S     m3/s, >= 0
 * @returns           W
 * @source            definition: pressure times volume flow
 * @valid             throws RangeError outside
 */
export function airPowerW(pressurePa: number, flowM3S: number): number {
  assertRange('pressurePa', pressurePa, 0, 1e5);
  assertRange('flowM3S', flowM3S, 0, 1e4);
  return pressurePa * flowM3S;
}

/**
 * Fan power for each thousand bushels.
 *
 * @param powerW    shaft or nameplate power, W, >= 0
 * @param bushels   > 0; of volume where it is held against cfm per bushel
 * @returns         hp per 1000 bushels
 * @source          definition
 * @valid           throws RangeError outside
 */
export function hpPerThousandBushels(powerW: number, bushels: number): number {
  assertRange('powerW', powerW, 0, 1e8);
  assertRange('bushels', bushels, 1e-3, 1e9);
  return powerW / HP_W / (bushels / 1000);
}

/**
 * Warming of air through a fan, all of whose power ends as heat in the stream.
 *
 * @param powerW       electric where the motor stands in the stream, else shaft power, W, >= 0
 * @param flowM3S      m3/s, > 0
 * @param densityKgM3  of the air at the fan, kg/m3, 0.5 to 2
 * @param heatJKgK     specific heat of the air, 900 to 2000 J/(kg K); of dry air when left out
 * @returns            K
 * @source             heat balance
 * @valid              throws RangeError outside
 */
export function fanWarmingK(
  powerW: number,
  flowM3S: number,
  densityKgM3: number,
  heatJKgK = HEAT_DRY_AIR_J_KGK,
): number {
  assertRange('powerW', powerW, 0, 1e8);
  assertRange('flowM3S', flowM3S, 1e-6, 1e4);
  assertRange('densityKgM3', densityKgM3, 0.5, 2);
  assertRange('heatJKgK', heatJKgK, ...HEAT_RANGE_J_KGK);
  return powerW / (flowM3S * densityKgM3 * heatJKgK);
}

/**
 * The same from static pressure and the efficiency of fan (and motor, where it stands in the stream).
 *
 * @param pressurePa   rise through the fan, Pa, >= 0
 * @param efficiency   air power over the power that goes in, fraction, 0.05 to 1
 * @param densityKgM3  of the air at the fan, kg/m3, 0.5 to 2
 * @param heatJKgK     specific heat of the air, 900 to 2000 J/(kg K); of dry air when left out
 * @returns            K
 * @source             heat balance; engineers-edge-fan gives it in inches of water and degF
 * @valid              throws RangeError outside
 */
export function fanWarmingByPressureK(
  pressurePa: number,
  efficiency: number,
  densityKgM3: number,
  heatJKgK = HEAT_DRY_AIR_J_KGK,
): number {
  assertRange('pressurePa', pressurePa, 0, 1e5);
  assertRange('efficiency', efficiency, 0.05, 1);
  assertRange('densityKgM3', densityKgM3, 0.5, 2);
  assertRange('heatJKgK', heatJKgK, ...HEAT_RANGE_J_KGK);
  return pressurePa / (efficiency * densityKgM3 * heatJKgK);
}
