import { assertRange } from '../base/errors.ts';

/** Water per dry matter from water per wet weight, both fractions: the kernel, no checks. */
export function dryFromWet(moistureWb: number): number {
  return moistureWb / (1 - moistureWb);
}

/** Water per wet weight from water per dry matter, both fractions: the kernel, no checks. */
export function wetFromDry(moistureDb: number): number {
  return moistureDb / (1 + moistureDb);
}

/** Moisture as a fraction of dry matter from a fraction of the whole. @valid 0 to 0.9; throws RangeError outside */
export function moistureDbFromWb(moistureWb: number): number {
  assertRange('moistureWb', moistureWb, 0, 0.9);
  return dryFromWet(moistureWb);
}

/** Moisture as a fraction of the whole from a fraction of dry matter. @valid 0 to 10; throws RangeError outside */
export function moistureWbFromDb(moistureDb: number): number {
  assertRange('moistureDb', moistureDb, 0, 10);
  return wetFromDry(moistureDb);
}
