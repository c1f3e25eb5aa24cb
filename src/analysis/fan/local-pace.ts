import { LONG_MS, type MeterIntervals } from './meter.ts';
import type { MeterRate } from './meter-runs.ts';
import { middle } from './usual-interval.ts';

const NEIGHBOURS = 7;
const STEADY = 0.05;

/** How the intervals of a fine meter relate to the fan's running pace. Arrays are [intervals]. */
export interface Paced {
  /** the running pace of the place, advance a second */
  pace: Float64Array;
  /** advance over what the fan would use at that pace; NaN where not known */
  share: Float64Array;
  /** 1: the fan ran through the whole interval */
  full: Uint8Array;
}

/**
 * The running pace around each interval: a motor draws more in cold air and against more grain, so the season's own median
 * would take part of a long run for a stop. Median of the fifteen nearest steady intervals (a neighbour within 5 %) at
 * 0.7 to 1.3 of the usual pace. An interval is full when it reaches that pace less the slack, or when it is one of three
 * in a row at a steady pace of their own (a heater that joins, a second speed).
 */
export function localPace(meter: MeterIntervals, rate: MeterRate): Paced {
  const { startMs, endMs, advance, resolution } = meter;
  const own = advance.map((a, i) => (a / (endMs[i] - startMs[i])) * 1000);
  const near = (a: number, b: number, within: number) => Math.abs(a - b) <= within * Math.max(a, b);
  const steady: number[] = [];
  for (let i = 0; i < own.length; i++) {
    if (!(own[i] >= 0.7 * rate.perSecond && own[i] <= 1.3 * rate.perSecond) || endMs[i] - startMs[i] > LONG_MS)
      continue;
    if (near(own[i], own[i - 1], STEADY) || near(own[i], own[i + 1], STEADY)) steady.push(i);
  }
  const medians = steady.map((_, s) =>
    middle(steady.slice(Math.max(0, s - NEIGHBOURS), s + NEIGHBOURS + 1).map((i) => own[i])),
  );
  const exact = rate.slack <= 0.03;
  let s = 0;
  const pace = own.map((_, i) => {
    if (exact || steady.length === 0) return rate.perSecond;
    while (s + 1 < steady.length && Math.abs(steady[s + 1] - i) <= Math.abs(steady[s] - i)) s += 1;
    return medians[s];
  });
  const share = own.map((p, i) => p / pace[i]);
  const alike = (i: number, j: number) => share[i] >= 0.3 && near(share[i], share[j], 0.08);
  const full = Uint8Array.from(share, (value, i) => {
    const step = resolution / ((pace[i] * (endMs[i] - startMs[i])) / 1000);
    if (value >= 1 - rate.slack - step) return 1;
    if (exact) return 0;
    const three =
      (alike(i, i - 1) && alike(i, i + 1)) ||
      (alike(i, i + 1) && alike(i, i + 2)) ||
      (alike(i, i - 1) && alike(i, i - 2));
    return three ? 1 : 0;
  });
  // Between two full intervals a reset one is full too, whatever the meter had counted when it was reset.
  for (let i = 1; i + 1 < full.length; i++)
    if (meter.reset[i] === 1 && full[i - 1] === 1 && full[i + 1] === 1) full[i] = 1;
  return { pace, share, full };
}
