/** A file's stamps in file order; every array is [rows]. */
export interface Stamps {
  /** local wall clock as if it were UTC where `local` is 1, else the instant; NaN where no stamp could be read */
  ms: Float64Array;
  local: Uint8Array;
  /** which series (sensor, fan, bin, …) the row belongs to, from 0; -1 where the row cannot be placed */
  series: Int32Array;
}

/** Rows of each series, in file order. */
export function rowsBySeries(stamps: Stamps): number[][] {
  const out: number[][] = [];
  for (let row = 0; row < stamps.series.length; row++) {
    const code = stamps.series[row];
    if (code < 0 || Number.isNaN(stamps.ms[row])) continue;
    while (out.length <= code) out.push([]);
    out[code].push(row);
  }
  return out;
}

/** Whether the file is written newest first: within its series more steps go back than forth. */
export function isDescending(stamps: Stamps, bySeries: readonly number[][]): boolean {
  let balance = 0;
  for (const rows of bySeries) {
    for (let i = 1; i < rows.length; i++) balance += Math.sign(stamps.ms[rows[i]] - stamps.ms[rows[i - 1]]);
  }
  return balance < 0;
}

/** The usual step of a series, ms: the median of the steps between different stamps; NaN when there are fewer than two. */
export function usualStepMs(times: ArrayLike<number>): number {
  const steps: number[] = [];
  for (let i = 1; i < times.length; i++) {
    const step = Math.abs(times[i] - times[i - 1]);
    if (step > 0) steps.push(step);
  }
  if (steps.length < 2) return Number.NaN;
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1];
}
