import type { MeterIntervals } from './meter.ts';
import { middle } from './usual-interval.ts';

/** Intervals longer than this tell how long a fan ran, but not when. */
export const LONG_MS = 2 * 3_600_000;
const STEADY = 0.1;
const LEAST_OF_NOMINAL = 0.3;
const FEWEST = 3;

/** True where the meter's step is too coarse to tell a part of an interval: over a tenth of what one interval uses. */
export function isCoarse(meter: MeterIntervals, runningPerSecond: number): boolean {
  const usual = middle(meter.endMs.map((end, i) => end - meter.startMs[i]));
  return meter.resolution > (0.1 * runningPerSecond * usual) / 1000;
}

/**
 * What the meter advances a second while the fan runs, J/s.
 *
 * A fine meter: the median over intervals whose neighbour advances at the same pace (10 %), for a partly run interval
 * has no such neighbour. A coarse one: the median pace over ten steps of the meter, of those near the fastest.
 *
 * @param nominal  what the nameplate lets expect, W; paces under 30 % of it are no running pace
 * @returns        the pace, or NaN where the meter shows too few
 */
export function runningRate(meter: MeterIntervals, nominal: number): number {
  return isCoarse(meter, nominal) ? coarseRate(meter, nominal) : steadyRate(meter, nominal);
}

function steadyRate(meter: MeterIntervals, nominal: number): number {
  const { startMs, endMs, advance } = meter;
  const pace = advance.map((a, i) =>
    endMs[i] - startMs[i] <= LONG_MS ? (a / (endMs[i] - startMs[i])) * 1000 : Number.NaN,
  );
  const steady = pace.filter(
    (p, i) =>
      p >= LEAST_OF_NOMINAL * nominal &&
      (Math.abs(pace[i - 1] - p) <= STEADY * p || Math.abs(pace[i + 1] - p) <= STEADY * p),
  );
  return steady.length < FEWEST ? Number.NaN : middle(steady);
}

function coarseRate(meter: MeterIntervals, nominal: number): number {
  const { startMs, endMs, advance, resolution } = meter;
  const paces: number[] = [];
  let to = 0;
  let sum = 0;
  for (let from = 0; from < advance.length; from++) {
    if (to < from) {
      to = from;
      sum = 0;
    }
    while (to < advance.length && sum < 10 * resolution) {
      sum += advance[to];
      to += 1;
    }
    // Windows that begin just after a step and end with one hold whole steps.
    if (sum >= 10 * resolution && (from === 0 || advance[from - 1] > 0)) {
      paces.push((sum / (endMs[to - 1] - startMs[from])) * 1000);
    }
    if (Number.isNaN(sum)) {
      from = to - 1;
      sum = 0;
    } else sum -= advance[from];
  }
  const sorted = Float64Array.from(paces.filter((pace) => pace >= LEAST_OF_NOMINAL * nominal)).sort();
  if (sorted.length < FEWEST) return Number.NaN;
  const fast = sorted[Math.floor(0.95 * (sorted.length - 1))];
  return middle(sorted.filter((pace) => pace >= 0.85 * fast));
}
