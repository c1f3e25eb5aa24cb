/**
 * Index of the first of rising values that is not below a bound; the count where there is none.
 *
 * @param values  not falling
 */
export function firstNotBefore(values: ArrayLike<number>, bound: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle] < bound) low = middle + 1;
    else high = middle;
  }
  return low;
}
