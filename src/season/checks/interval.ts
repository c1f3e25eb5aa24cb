/** The usual time between readings: the median of the steps, ms; NaN with fewer than two readings. Times rise; equal ones don't count. */
export function usualInterval(timeMs: ArrayLike<number>): number {
  const steps: number[] = [];
  for (let i = 1; i < timeMs.length; i++) if (timeMs[i] > timeMs[i - 1]) steps.push(timeMs[i] - timeMs[i - 1]);
  return steps.length === 0 ? Number.NaN : quantileOf(Float64Array.from(steps).sort(), 0.5);
}

/** A quantile of sorted values, the nearest one. NaN for none. */
export function quantileOf(sorted: ArrayLike<number>, p: number): number {
  if (sorted.length === 0) return Number.NaN;
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))];
}
