/** A meter may drop by its own last digit without having been reset: this share of its reading. */
const LAST_DIGIT = 1e-6;
/** Readings within which a slipped reading shows itself by the meter going on as before. */
export const SLIP_READINGS = 3;

/** What a running meter did that a running meter does not do; positions, rising. */
export interface MeterFaults {
  /** first reading after the meter jumped back for good */
  resets: number[];
  /** readings that slipped, low or high, while the meter before and after goes on */
  slips: number[];
}

/**
 * @param values  running meter, [readings]; NaN is missing
 * @param use     [readings], 0 to pass over
 */
export function meterFaults(values: ArrayLike<number>, use: ArrayLike<number>): MeterFaults {
  const at: number[] = [];
  for (let i = 0; i < values.length; i++) if (use[i] && Number.isFinite(values[i])) at.push(i);
  const resets: number[] = [];
  const slips: number[] = [];
  let last = 0;
  for (let k = 1; k < at.length; k++) {
    const before = values[at[last]];
    const now = values[at[k]];
    const slack = LAST_DIGIT * Math.abs(before);
    if (now >= before - slack) {
      last = k;
      continue;
    }
    // Low for a few readings, then on from where it was: those slipped. Missing a climb all at once is no sign of it.
    const back = backAt(values, at, k, before);
    if (back > 0) {
      for (let j = k; j < back; j++) slips.push(at[j]);
      last = back;
      k = back;
      continue;
    }
    // High just before, and now on from the one before that: the high one slipped.
    const earlier = k >= 2 ? values[at[k - 2]] : Number.NaN;
    if (now >= earlier && last === k - 1 && before - earlier > 10 * usualStep(values, at, k)) {
      slips.push(at[k - 1]);
    } else {
      resets.push(at[k]);
    }
    last = k;
  }
  return { resets, slips };
}

/** So many of the usual steps, or of the smallest, may stand beyond what can be counted: a coarse meter steps when it does. */
const STEPS = 2;

/**
 * Readings to which a running meter jumped ahead by more than can be counted meanwhile, and from which it counts on: another meter
 * stands in its place. Positions, rising.
 *
 * @param values     running meter, [readings]; NaN is missing
 * @param timeMs     [readings]
 * @param perSecond  what it can advance at most
 * @param skip       positions that slipped
 */
export function meterLeaps(
  values: ArrayLike<number>,
  timeMs: ArrayLike<number>,
  perSecond: number,
  skip: ReadonlySet<number>,
): number[] {
  const leaps: number[] = [];
  const at = Array.from({ length: values.length }, (_, i) => i).filter(
    (i) => Number.isFinite(values[i]) && !skip.has(i),
  );
  const smallest = smallestStep(values, at);
  for (let k = 1; k < at.length; k++) {
    const ahead = values[at[k]] - values[at[k - 1]];
    const seconds = (timeMs[at[k]] - timeMs[at[k - 1]]) / 1000;
    if (ahead > perSecond * seconds + STEPS * Math.max(smallest, usualStep(values, at, k))) leaps.push(at[k]);
  }
  return leaps;
}

/** The smallest step up, but for crumbs of written decimals; 0 where there are fewer than two: after a long rest no step shortly before tells what the dial moves by. */
function smallestStep(values: ArrayLike<number>, at: readonly number[]): number {
  const steps = at
    .slice(1)
    .map((i, k) => values[i] - values[at[k]])
    .filter((step, k) => step > LAST_DIGIT * Math.abs(values[at[k]]));
  return steps.length < 2 ? 0 : steps.reduce((least, step) => Math.min(least, step));
}

/** The reading, within SLIP_READINGS, from which the meter goes on at its old level; -1 for none. */
function backAt(values: ArrayLike<number>, at: readonly number[], k: number, before: number): number {
  for (let j = k + 1; j <= k + SLIP_READINGS && j < at.length; j++) {
    const now = values[at[j]];
    if (now >= before && now - before <= (j - k + 1) * 10 * usualStep(values, at, k)) return j;
  }
  return -1;
}

/** The largest of the steps up in the readings shortly before, a little more than nothing. */
function usualStep(values: ArrayLike<number>, at: readonly number[], k: number): number {
  let most = 0;
  for (let j = Math.max(1, k - 24); j < k - 1; j++) most = Math.max(most, values[at[j]] - values[at[j - 1]]);
  return most;
}
