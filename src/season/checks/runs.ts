import { HOUR_MS, type Track, used } from './track.ts';

/** A run of one and the same value; positions of the track, both inclusive. */
export interface Run {
  first: number;
  last: number;
  readings: number;
  value: number;
  fromMs: number;
  toMs: number;
}

/** Values closer than this are the same reading: what a unit's conversion leaves, far below any sensor's step. */
const SAME = 1e-7;

/** A hole of this length ends a run: nobody saw what the sensor did. */
const HOLE_MS = 48 * HOUR_MS;

/**
 * Runs of identical values, in time order; missing values inside a run do not end it.
 *
 * @param leastMs        shortest run
 * @param leastReadings  fewest readings
 */
export function sameValueRuns(track: Track, leastMs: number, leastReadings: number): Run[] {
  const at = used(track);
  const { timeMs, values } = track;
  const runs: Run[] = [];
  let start = 0;
  for (let k = 1; k <= at.length; k++) {
    const goes =
      k < at.length &&
      Math.abs(values[at[k]] - values[at[start]]) <= SAME &&
      timeMs[at[k]] - timeMs[at[k - 1]] <= HOLE_MS;
    if (goes) continue;
    const first = at[start];
    const last = at[k - 1];
    if (k - start >= leastReadings && timeMs[last] - timeMs[first] >= leastMs) {
      runs.push({
        first,
        last,
        readings: k - start,
        value: values[first],
        fromMs: timeMs[first],
        toMs: timeMs[last],
      });
    }
    start = k;
  }
  return runs;
}

/** The step between neighbouring values that a sensor can show; 0 where it shows no steps. */
export function resolutionOf(track: Track): number {
  const values = Float64Array.from(used(track), (i) => track.values[i]).sort();
  const steps: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const step = values[i] - values[i - 1];
    if (step > 1e-6) steps.push(step);
  }
  if (steps.length === 0) return 0;
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length * 0.2)];
}

/**
 * Standard deviation of a sensor's own flicker, from reading to reading, in its quieter part: third differences leave
 * nothing of a level, a slope or a bend, and what rounding alone makes is taken off.
 *
 * @param skip  runs that are under suspicion
 * @returns     in the track's unit; 0 where nothing flickers or the log is too short to tell
 */
export function flickerOf(track: Track, resolution: number, skip: readonly Run[]): number {
  const at = used(track);
  const block = 24;
  const variances: number[] = [];
  let sum = 0;
  let count = 0;
  let run = 0;
  for (let k = 3; k < at.length; k++) {
    while (run < skip.length && skip[run].last < at[k - 3]) run += 1;
    if (run < skip.length && at[k] >= skip[run].first) continue;
    const { values } = track;
    const third = values[at[k]] - 3 * values[at[k - 1]] + 3 * values[at[k - 2]] - values[at[k - 3]];
    sum += (third * third) / 20; // 1 + 9 + 9 + 1
    count += 1;
    if (count === block) {
      variances.push(sum / block);
      sum = 0;
      count = 0;
    }
  }
  if (variances.length < 3) return 0;
  variances.sort((a, b) => a - b);
  return Math.sqrt(Math.max(0, variances[Math.floor(variances.length / 4)] - resolution ** 2 / 12));
}
