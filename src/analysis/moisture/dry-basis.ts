/** Water per dry matter from water per wet weight; both fractions. */
export function dryFromWet(moistureWb: number): number {
  return moistureWb / (1 - moistureWb);
}

/** Water per wet weight from water per dry matter; both fractions. */
export function wetFromDry(moistureDb: number): number {
  return moistureDb / (1 + moistureDb);
}
