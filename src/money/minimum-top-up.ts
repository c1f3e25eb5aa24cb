/** What a minimum bill adds to a month's charges: 0 where they reach it or none is stated. Connected charges count with a twelfth. */
export function minimumTopUp(minimumPerMonth: number | null, charges: number): number {
  return minimumPerMonth === null ? 0 : Math.max(0, minimumPerMonth - charges);
}
