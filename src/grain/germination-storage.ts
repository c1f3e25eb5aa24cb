import { assertRange } from '../base/errors.ts';

const HOURS_A_DAY = 24;

/**
 * Hours until the germination of wheat falls to 95 %. The two lines of the equation do not meet at 19 %: colder than 5 degC
 * damper wheat is given up to 6 % more there, warmer up to a third less, the equation's own fault, left as published.
 *
 * @param tempC       grain temperature, degC, 0 to 40
 * @param moistureWb  fraction, wet basis, 0.12 to 0.24
 * @returns           h; 8 % shorter to 38 % longer than Karunakaran et al. 2001 measured (to 90 %) for a cultivar that kept badly: an order of magnitude
 * @source            fraser-muir-1981; memory
 * @valid             throws RangeError outside
 */
export function wheatStorageHours(tempC: number, moistureWb: number): number {
  assertRange('tempC', tempC, 0, 40);
  assertRange('moistureWb', moistureWb, 0.12, 0.24);
  const m = 100 * moistureWb;
  const log10Days = m <= 19 ? 6.234 - 0.2118 * m - 0.0527 * tempC : 4.129 - 0.0997 * m - 0.0576 * tempC;
  return HOURS_A_DAY * 10 ** log10Days;
}

/**
 * Hours until the germination of canola suffers.
 *
 * @param tempC       grain temperature, degC, 0 to 40
 * @param moistureWb  fraction, wet basis, 0.06 to 0.17 (range from memory too)
 * @returns           h
 * @source            kreyger-1972; memory, borne out by nothing here
 * @valid             throws RangeError outside
 */
export function canolaStorageHours(tempC: number, moistureWb: number): number {
  assertRange('tempC', tempC, 0, 40);
  assertRange('moistureWb', moistureWb, 0.06, 0.17);
  return HOURS_A_DAY * 10 ** (6.224 - 30.2 * moistureWb - 0.069 * tempC);
}
