/** What one cause may do to a quantity, kg (sd); the sign says which way a positive error of it moves that. */
export interface Cause {
  cause: string;
  sdKg: number;
}

/**
 * What each cause may do to a sum of several ways to one quantity. A cause that stands in two of them is one error and not two: a
 * thermometer that reads too warm may raise the one and lower the other.
 *
 * @param ways  each with its factor in the sum
 * @returns     in order of first appearance, no sign
 */
export function joinedCauses(ways: readonly { factor: number; parts: readonly Cause[] }[]): Cause[] {
  const sums = new Map<string, number>();
  for (const { factor, parts } of ways) {
    for (const { cause, sdKg } of parts) sums.set(cause, (sums.get(cause) ?? 0) + factor * sdKg);
  }
  return [...sums].map(([cause, sdKg]) => ({ cause, sdKg: Math.abs(sdKg) }));
}
