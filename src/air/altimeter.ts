/**
 * Station pressure from an altimeter setting, which is defined by it and the height alone: the kernel, no checks.
 *
 * @param settingPa   Pa
 * @param elevationM  of the place, m
 * @returns           Pa
 * @source            Smithsonian Meteorological Tables, 6th ed. (1951), altimeter setting: (P^n + k z)^(1/n), n = 0.190263, k = 8.417286e-5
 *                    with hPa and m; solved for P (from memory; held against stations that report both)
 */
export function stationFromAltimeterPa(settingPa: number, elevationM: number): number {
  const exponent = 0.190263;
  return 100 * ((settingPa / 100) ** exponent - 8.417286e-5 * elevationM) ** (1 / exponent);
}
