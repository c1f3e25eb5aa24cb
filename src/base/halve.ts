/**
 * Where something steady changes over, by halving the stretch between two bounds: 60 times leave less than the last bit of
 * any stretch in use.
 *
 * @param low      a bound at which `isBelow` holds
 * @param high     a bound at which it does not; the caller sees to both
 * @param isBelow  whether the place that is looked for lies above this one
 * @returns        between `low` and `high`
 */
export function halve(low: number, high: number, isBelow: (middle: number) => boolean, times = 60): number {
  let [from, to] = [low, high];
  for (let i = 0; i < times; i++) {
    const middle = (from + to) / 2;
    if (isBelow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
