/** The word that goes with a count: `is` or `are`, `load` or `loads`. */
export function agreeing(count: number, one: string, many: string): string {
  return count === 1 ? one : many;
}
