/** A difference of temperature in both systems: a page shows the one of its reader. */
export const degreesSaid = (deltaK: number): string => `${deltaK.toFixed(1)} °C (${(1.8 * deltaK).toFixed(1)} °F)`;

/** A difference above a limit, with as many digits as show that it is: 1.24 over a limit of 1.2 is not told as 1.2. */
export function degreesOverSaid(deltaK: number, limitK: number): string {
  const celsius = overSaid(deltaK, limitK, 1);
  return `${celsius} °C (${(1.8 * deltaK).toFixed(celsius.split('.')[1].length)} °F)`;
}

/** A number above a limit with at least so many digits, and as many more, up to four, as show it. */
export function overSaid(value: number, limit: number, leastDigits: number): string {
  const digits = [1, 2, 3, 4].find((count) => count >= leastDigits && Number(value.toFixed(count)) > limit) ?? 4;
  return value.toFixed(digits);
}
