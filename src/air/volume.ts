/** Gas constant of dry air, J/(kg K). ashrae-2017, ch. 1, eq. 1 */
export const GAS_DRY_AIR_J_KGK = 287.042;
const DRY_AIR_PER_WATER = 1.607858; // molar mass of dry air over that of water; ashrae-2017, ch. 1, eq. 26

/**
 * Volume of moist air per kilogram of dry air: the kernel, no checks.
 *
 * @param tempC          air temperature, degC
 * @param humidityRatio  kg water per kg dry air
 * @param pressurePa     total pressure, Pa
 * @returns              m3 per kg dry air
 * @source               ashrae-2017, ch. 1, eq. 26
 */
export function specificVolumeM3Kg(tempC: number, humidityRatio: number, pressurePa: number): number {
  return (GAS_DRY_AIR_J_KGK * (tempC + 273.15) * (1 + DRY_AIR_PER_WATER * humidityRatio)) / pressurePa;
}

/**
 * Density of moist air, dry air and vapour together: the kernel, no checks.
 *
 * @returns  kg/m3
 * @source   ashrae-2017, ch. 1, eq. 11
 */
export function airDensityKgM3(tempC: number, humidityRatio: number, pressurePa: number): number {
  return (1 + humidityRatio) / specificVolumeM3Kg(tempC, humidityRatio, pressurePa);
}
