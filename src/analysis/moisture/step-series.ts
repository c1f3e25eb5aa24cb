/**
 * Means of readings over steps that end at `endMs`, each over `overMs` about its own middle; steps without a reading lie
 * on the straight line between their neighbours (the ends hold the nearest).
 *
 * @param timeMs, value  readings in time order, [readings]
 * @param leastKnown     least share of the steps with a reading
 * @returns              [steps]; null where fewer have one, or none
 */
export function stepSeries(
  timeMs: Float64Array,
  value: Float64Array,
  endMs: number,
  steps: number,
  stepMs: number,
  overMs: number,
  leastKnown = 0.5,
): Float64Array | null {
  const means = new Float64Array(steps).fill(Number.NaN);
  let low = 0;
  let high = 0;
  let sum = 0;
  let known = 0;
  for (let i = 0; i < steps; i++) {
    const middle = endMs - (steps - i - 0.5) * stepMs;
    while (high < timeMs.length && timeMs[high] < middle + overMs / 2) sum += value[high++];
    while (low < high && timeMs[low] < middle - overMs / 2) sum -= value[low++];
    if (high === low) continue;
    means[i] = sum / (high - low);
    known++;
  }
  if (known < leastKnown * steps || known === 0) return null;
  fillHoles(means);
  return means;
}

function fillHoles(means: Float64Array): void {
  let last = -1;
  for (let i = 0; i <= means.length; i++) {
    if (i < means.length && Number.isNaN(means[i])) continue;
    for (let hole = last + 1; hole < i; hole++) {
      if (last < 0) means[hole] = means[i];
      else if (i === means.length) means[hole] = means[last];
      else means[hole] = means[last] + ((means[i] - means[last]) * (hole - last)) / (i - last);
    }
    last = i;
  }
}
