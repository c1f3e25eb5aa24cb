/** Specific heat of dry air, J/(kg K). ashrae-2017, ch. 1, eq. 30 */
export const HEAT_DRY_AIR_J_KGK = 1006;
/** Specific heat of water vapour, J/(kg K). ashrae-2017, ch. 1, eq. 30 */
export const HEAT_VAPOUR_J_KGK = 1860;
/** Heat of vaporisation of water at 0 degC, J/kg. ashrae-2017, ch. 1, eq. 30 */
export const VAPORISATION_0C_J_KG = 2.501e6;

/**
 * Enthalpy of moist air, counted from dry air and liquid water at 0 degC: the kernel, no checks.
 *
 * @param tempC          air temperature, degC
 * @param humidityRatio  kg water per kg dry air
 * @returns              J per kg dry air
 * @source               ashrae-2017, ch. 1, eq. 30
 */
export function enthalpyJKg(tempC: number, humidityRatio: number): number {
  return HEAT_DRY_AIR_J_KGK * tempC + humidityRatio * (VAPORISATION_0C_J_KG + HEAT_VAPOUR_J_KGK * tempC);
}

/**
 * Temperature of moist air from its enthalpy: eq. 30 solved for the temperature; the kernel, no checks.
 *
 * @param enthalpyJKg    J per kg dry air
 * @param humidityRatio  kg water per kg dry air
 * @returns              degC
 * @source               ashrae-2017, ch. 1, eq. 30
 */
export function tempOfEnthalpyC(enthalpyJKg: number, humidityRatio: number): number {
  return (
    (enthalpyJKg - humidityRatio * VAPORISATION_0C_J_KG) / (HEAT_DRY_AIR_J_KGK + humidityRatio * HEAT_VAPOUR_J_KGK)
  );
}
