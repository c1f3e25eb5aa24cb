/** Above which value of current (A) or power (W) the fan counts as running, and how that was found. */
export interface RunningThreshold {
  above: number;
  /** `clusters`: between two levels of the log; `one level`: the log has one, held against the nameplate */
  from: 'clusters' | 'one level';
  /** typical value while running, NaN where the log shows no run */
  running: number;
}

// Below a tenth of full load no fan motor turns: idling motors draw a quarter to a half (common practice, from memory).
const FLOOR_OF_FULL_LOAD = 0.1;
// A motor on a fan draws at least this while it runs; a lower of two levels above it is running too (a heater cycles on top).
const SURELY_RUNNING = 0.25;
// Two levels closer than this are one level that drifts, not off and on.
const LEAST_RATIO = 2.5;
const BINS = 256;

/**
 * Find the threshold between the off and the on values of a log.
 *
 * Otsu's split (IEEE Trans. SMC 9:62, 1979) of the logarithms: a heater's second level or an inrush is near the running
 * level on that scale and far from zero, noise about zero is not spread by it. The split is then held against the
 * nameplate: two levels that both run, or neither of which does, are one. The threshold lies at half of the lowest
 * running values, so that a sample that averages a start or stop is taken by its greater part.
 *
 * @param values    [samples], A or W, any order; noise below zero is allowed
 * @param fullLoad  the same at full load, > 0
 */
export function findRunningThreshold(values: Float64Array, fullLoad: number): RunningThreshold {
  const floor = FLOOR_OF_FULL_LOAD * fullLoad;
  const sorted = values.slice().sort();
  const none: RunningThreshold = { above: floor, from: 'one level', running: Number.NaN };
  if (sorted.length === 0) return none;
  const split = otsuSplit(sorted, floor);
  const low = sorted.subarray(0, split);
  const high = sorted.subarray(split);
  const one = (above: number): RunningThreshold => {
    const on = sorted.subarray(firstAbove(sorted, above));
    return { above, from: 'one level', running: on.length === 0 ? Number.NaN : quantile(on, 0.5) };
  };
  if (low.length === 0 || high.length === 0) return one(floor);
  const lowLevel = quantile(low, 0.5);
  const highLevel = quantile(high, 0.5);
  if (highLevel < floor) return one(floor);
  if (lowLevel >= SURELY_RUNNING * fullLoad) return one(floor);
  if (highLevel < LEAST_RATIO * lowLevel) return one(floor);
  const half = quantile(high, 0.05) / 2;
  // Where half of the running level reaches into the off values the split itself is the better place.
  const above = half > quantile(low, 0.99) ? half : (low[low.length - 1] + high[0]) / 2;
  return { above: Math.max(above, Math.min(floor, high[0] / 2)), from: 'clusters', running: highLevel };
}

/** Count of values below the split that leaves the two classes of logarithms furthest apart. */
function otsuSplit(sorted: Float64Array, floor: number): number {
  // A quarter of the floor added: what is far below the least running current counts as much as zero.
  const log = (value: number) => Math.log(Math.max(value, 0) + floor / 4);
  const from = log(sorted[0]);
  const to = log(sorted[sorted.length - 1]);
  if (!(to > from)) return 0;
  const counts = new Float64Array(BINS);
  const sums = new Float64Array(BINS);
  const binOf = (x: number) => Math.min(BINS - 1, Math.floor(((x - from) / (to - from)) * BINS));
  let total = 0;
  for (const value of sorted) {
    const x = log(value);
    counts[binOf(x)] += 1;
    sums[binOf(x)] += x;
    total += x;
  }
  let best = -1;
  let split = 0;
  let below = 0;
  let sumBelow = 0;
  for (let bin = 0; bin < BINS - 1; bin++) {
    below += counts[bin];
    sumBelow += sums[bin];
    const above = sorted.length - below;
    if (below === 0 || above === 0 || counts[bin] === 0) continue;
    const between = below * above * (sumBelow / below - (total - sumBelow) / above) ** 2;
    if (between > best) {
      best = between;
      split = below;
    }
  }
  return split;
}

function quantile(sorted: Float64Array, q: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];
}

function firstAbove(sorted: Float64Array, limit: number): number {
  let i = 0;
  while (i < sorted.length && sorted[i] <= limit) i += 1;
  return i;
}
