import { assertRange } from '../base/errors.ts';

/** Moisture as a fraction of dry matter from a fraction of the whole. @valid 0 to 0.9; throws RangeError outside */
export function moistureDbFromWb(moistureWb: number): number {
  assertRange('moistureWb', moistureWb, 0, 0.9);
  return moistureWb / (1 - moistureWb);
}

/** Moisture as a fraction of the whole from a fraction of dry matter. @valid 0 to 10; throws RangeError outside */
export function moistureWbFromDb(moistureDb: number): number {
  assertRange('moistureDb', moistureDb, 0, 10);
  return moistureDb / (1 + moistureDb);
}
