/** Even steps of time through a bin's storage. */
export interface StepGrid {
  startMs: number;
  count: number;
}

/** A quarter day: grain a foot from any air hardly moves within one. */
export const STEP_MS = 6 * 3_600_000;
export const STEP_H = 6;
export const STEPS_A_DAY = 4;

/** The steps that lie in [fromMs, toMs), whole from its start on; none where it is empty. */
export function stepGrid(fromMs: number, toMs: number): StepGrid {
  return { startMs: fromMs, count: toMs > fromMs ? Math.ceil((toMs - fromMs) / STEP_MS) : 0 };
}

/** Middles of the steps, ms UTC, [steps]. */
export function stepMiddles({ startMs, count }: StepGrid): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => startMs + (i + 0.5) * STEP_MS);
}

/**
 * Means of readings by step, [steps]; NaN where a step has none.
 *
 * @param timeMs, value  readings in time order, [readings]
 */
export function stepMeans(timeMs: Float64Array, value: Float64Array, { startMs, count }: StepGrid): Float64Array {
  const sum = new Float64Array(count);
  const readings = new Float64Array(count);
  for (let i = 0; i < timeMs.length; i++) {
    const step = Math.floor((timeMs[i] - startMs) / STEP_MS);
    if (step < 0 || step >= count) continue;
    sum[step] += value[i];
    readings[step] += 1;
  }
  return sum.map((one, step) => (readings[step] === 0 ? Number.NaN : one / readings[step]));
}
