/**
 * Mean with weights; pairs with a missing (NaN) value are left out with their weight.
 *
 * @returns NaN when no weight is left
 */
export function weightedMean(values: ArrayLike<number>, weights: ArrayLike<number>): number {
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    sum += values[i] * weights[i];
    weight += weights[i];
  }
  return weight > 0 ? sum / weight : Number.NaN;
}

/**
 * Value below which a share p of the weight lies: the first value, rising, at which the weight so far reaches p.
 *
 * @param p  0 to 1
 * @returns  one of the values; NaN when no weight is left
 */
export function weightedQuantile(values: ArrayLike<number>, weights: ArrayLike<number>, p: number): number {
  const order = Array.from(values, (_, i) => i)
    .filter((i) => !Number.isNaN(values[i]) && weights[i] > 0)
    .sort((a, b) => values[a] - values[b]);
  const total = order.reduce((sum, i) => sum + weights[i], 0);
  let soFar = 0;
  for (const i of order) {
    soFar += weights[i];
    if (soFar >= p * total * (1 - 1e-12)) return values[i];
  }
  return Number.NaN;
}
