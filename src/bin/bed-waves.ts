import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK } from '../air/enthalpy.ts';
import { humidityRatioOfVapour } from '../air/humidity-ratio.ts';
import { grainRatioPerK, grainRatioPerMoisture, grainVapourPressurePa } from '../grain/grain-air.ts';
import { GAS_WATER_J_KGK, heatOfVaporisationFreeJKg } from '../grain/heat-of-vaporisation.ts';
import type { Isotherm } from '../grain/isotherm.ts';
import { isothermLogHumiditySlope } from '../grain/isotherm-equations.ts';

/**
 * Two waves run through a bed whose air leaves each layer in balance with the grain: a fast one of temperature and a slow
 * one of moisture. They are the roots of c s^2 - (ca + hs Wt + c Wm) s + ca Wm = 0, from the balances of heat and water:
 * c heat of the grain and ca of the air for each kg of dry matter and dry air, hs heat of vaporisation from grain, Wt and Wm
 * how the humidity ratio of air in balance rises with temperature and moisture. Dry air alone gives s = ca / c; what
 * evaporation carries comes in with hs Wt.
 *
 * The kernel: no checks, no allocation. Heat and water held by the air between the kernels (a part in a thousand) and
 * conduction are left out.
 *
 * @param wave        `fast`: temperature; `slow`: moisture
 * @param isotherm    of the grain
 * @param tempC       of grain and air, degC
 * @param moistureDb  fraction of dry matter
 * @param heatJKgK    specific heat of the grain with its water, J per kg as it lies
 * @param pressurePa  total pressure, Pa
 * @returns           dry grain that the wave passes for each kg of dry air, kg/kg
 * @source            sutherland-1971 (heat and moisture as waves of an equilibrium bed); memory
 */
export function bedWaveRatio(
  wave: 'fast' | 'slow',
  isotherm: Isotherm,
  tempC: number,
  moistureDb: number,
  heatJKgK: number,
  pressurePa: number,
): number {
  const { equation, a, b, c } = isotherm;
  const ratio = humidityRatioOfVapour(grainVapourPressurePa(isotherm, tempC, moistureDb), pressurePa);
  const perK = grainRatioPerK(isotherm, tempC, moistureDb, pressurePa);
  const perMoisture = grainRatioPerMoisture(isotherm, tempC, moistureDb, pressurePa);
  const bound = isothermLogHumiditySlope(equation, a, b, c, tempC, moistureDb);
  const airHeat = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * ratio;
  const grainHeat = heatJKgK * (1 + moistureDb);
  const vaporisation = heatOfVaporisationFreeJKg(tempC) + GAS_WATER_J_KGK * (tempC + 273.15) ** 2 * bound;
  const half = (airHeat + vaporisation * perK + grainHeat * perMoisture) / 2;
  const fast = (half + Math.sqrt(half * half - grainHeat * airHeat * perMoisture)) / grainHeat;
  // The product of the roots: the difference would lose digits.
  return wave === 'fast' ? fast : (airHeat * perMoisture) / (grainHeat * fast);
}

/**
 * How moisture goes with temperature through the fast wave, from the balance of water. The kernel, no checks.
 *
 * @returns  fraction of dry matter for each K; above 0: grain that cools dries a little
 */
export function moisturePerKInWave(
  isotherm: Isotherm,
  tempC: number,
  moistureDb: number,
  heatJKgK: number,
  pressurePa: number,
): number {
  const perMoisture = grainRatioPerMoisture(isotherm, tempC, moistureDb, pressurePa);
  const fast = bedWaveRatio('fast', isotherm, tempC, moistureDb, heatJKgK, pressurePa);
  return grainRatioPerK(isotherm, tempC, moistureDb, pressurePa) / (fast - perMoisture);
}
