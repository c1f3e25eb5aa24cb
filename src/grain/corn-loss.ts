/**
 * How temperature is carried below 60 degF (15.6 degC). Both are in published use; at 30 degF they differ by a factor of 2:
 * `low-temperature`: Saul's own curve for cold corn; `carried-down`: the warm curve, as Thompson used it, the shorter times.
 */
export type CornColdForm = 'low-temperature' | 'carried-down';

/**
 * Dry matter lost by shelled corn in hours at the reference state (60 degF, 25 % wet basis, 30 % mechanical damage):
 * the kernel, no checks.
 *
 * @param referenceHours  h
 * @returns               fraction of the dry matter
 * @source                steele-1969 (CO2 production; 14.7 g CO2 per kg dry matter is 1 %); memory
 */
export function cornDryMatterLoss(referenceHours: number): number {
  return (0.0884 * Math.expm1(0.006 * referenceHours) + 0.00102 * referenceHours) / 100;
}

/** Slows or speeds the loss by moisture: multiplier of time, 1 near 25 % wet basis. @source steele-1969; 13 to 35 % wet basis */
export function cornMoistureMultiplier(moistureWb: number): number {
  const m = (100 * moistureWb) / (1 - moistureWb);
  return 0.103 * (Math.exp(455 / m ** 1.53) - 0.00845 * m + 1.558);
}

/**
 * Multiplier of time by temperature, 1 near 60 degF. Above 60 degF corn wetter than 19 % gets an addition that sets in at
 * once, so that the time steps up there by as much as 9 %: the equation's own fault, left as published.
 *
 * @param tempC       grain temperature, degC
 * @param moistureWb  fraction, wet basis
 * @param form        below 60 degF
 * @source            thompson-1972, saul-1970 (cold form); memory
 */
export function cornTemperatureMultiplier(tempC: number, moistureWb: number, form: CornColdForm): number {
  const tempF = 1.8 * tempC + 32;
  if (tempF <= 60) {
    return form === 'low-temperature' ? 128.76 * Math.exp((-4.86 * tempF) / 60) : 32.3 * Math.exp((-3.48 * tempF) / 60);
  }
  const wet = Math.min(Math.max(moistureWb - 0.19, 0), 0.09);
  return 32.3 * Math.exp((-3.48 * tempF) / 60) + wet * Math.exp((0.61 * (tempF - 60)) / 60);
}

/** Multiplier of time by mechanical damage (broken kernels, fraction by mass); 1.015 at the reference 0.30. @source thompson-1972 */
export function cornDamageMultiplier(damageFraction: number): number {
  return 2.08 * Math.exp(-2.39 * damageFraction);
}

/** Hours at the reference state that one hour at this temperature and moisture is worth; the kernel of a season's sum. */
export function cornReferenceHoursPerHour(tempC: number, moistureWb: number, form: CornColdForm): number {
  return 1 / (cornMoistureMultiplier(moistureWb) * cornTemperatureMultiplier(tempC, moistureWb, form));
}
