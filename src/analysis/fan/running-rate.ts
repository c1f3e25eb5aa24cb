import { LONG_MS, type MeterIntervals } from './meter.ts';
import { middle } from './usual-interval.ts';

const STEADY = 0.1;
const LEAST_OF_NOMINAL = 0.3;
const FEWEST = 3;
/** So many steps of a meter are good to a percent. */
const FEWEST_STEPS = 100;
// Whole days at one pace are days that the fan ran through, if it is the pace of a motor at work: fans take 80 to 110 % of
// their nameplate's power, some less (common practice, from memory). A clock that runs a fan 19 hours of each day looks alike.
const ALIKE_DAYS = 0.03;
const LEAST_OF_NOMINAL_BY_DAYS = 0.75;

/** True where the meter's step is too coarse to tell a part of an interval: over a tenth of what one interval uses. */
export function isCoarse(meter: MeterIntervals, runningPerSecond: number): boolean {
  const usual = middle(meter.endMs.map((end, i) => end - meter.startMs[i]));
  return meter.resolution > (0.1 * runningPerSecond * usual) / 1000;
}

/**
 * What the meter advances a second while the fan runs, J/s.
 *
 * A fine meter: the median over intervals whose neighbour advances at the same pace (10 %), for a partly run interval
 * has no such neighbour. A coarse one: the median pace over ten steps of the meter, of those near the fastest; where it
 * steps in every interval of a run, the pace over all runs together.
 *
 * Read once a day or so: the pace of days that the fan ran through, where there are some.
 *
 * @param nominal  what the nameplate lets expect, W; paces under 30 % of it are no running pace
 * @returns        the pace, or NaN where the meter shows too few
 */
export function runningRate(meter: MeterIntervals, nominal: number): number {
  const short = isCoarse(meter, nominal) ? coarseRate(meter, nominal) : steadyRate(meter, nominal);
  return Number.isNaN(short) ? longRate(meter, nominal) : short;
}

/** The pace of long intervals that the fan ran through: three in a row alike, of those near the fastest. */
function longRate({ startMs, endMs, advance }: MeterIntervals, nominal: number): number {
  const pace = advance.map((a, i) =>
    endMs[i] - startMs[i] > LONG_MS ? (a / (endMs[i] - startMs[i])) * 1000 : Number.NaN,
  );
  const alike = (i: number, j: number) => Math.abs(pace[i] - pace[j]) <= ALIKE_DAYS * pace[i];
  const through = pace.filter(
    (p, i) =>
      p >= LEAST_OF_NOMINAL_BY_DAYS * nominal &&
      ((alike(i, i - 1) && alike(i, i + 1)) ||
        (alike(i, i + 1) && alike(i, i + 2)) ||
        (alike(i, i - 1) && alike(i, i - 2))),
  );
  const fast = Math.max(...through);
  const near = through.filter((p) => p >= (1 - STEADY) * fast);
  return near.length < FEWEST ? Number.NaN : middle(near);
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
  const usual = middle(sorted.filter((pace) => pace >= 0.85 * fast));
  const within = paceWithinRuns(meter, usual);
  return Math.abs(within - usual) <= STEADY * usual ? within : usual;
}

/**
 * The pace over all runs together, of a meter that steps in every interval of a run: few whole steps in few whole samples make only
 * certain paces, none of which may be the fan's. The first and the last interval of a run are left out.
 *
 * @returns  advance a second; NaN where the meter's steps are further apart than its readings, or too few
 */
function paceWithinRuns({ startMs, endMs, advance, resolution }: MeterIntervals, pace: number): number {
  const interval = middle(endMs.map((end, i) => end - startMs[i]));
  // Of a run no interval is without a step where each holds one and a half.
  if ((pace * interval) / 1000 < 1.5 * resolution) return Number.NaN;
  let sum = 0;
  let timeMs = 0;
  for (let i = 2; i + 2 < advance.length; i++) {
    const inside = [-2, -1, 0, 1, 2].every((k) => advance[i + k] > 0);
    const whole = endMs[i] - startMs[i] <= LONG_MS;
    if (!inside || !whole) continue;
    sum += advance[i];
    timeMs += endMs[i] - startMs[i];
  }
  return sum >= FEWEST_STEPS * resolution ? (sum / timeMs) * 1000 : Number.NaN;
}

/** The pace that a fan ran at no less than: the third highest of long intervals (two may be misread), J/s; 0 without such. */
export function leastPace({ startMs, endMs, advance }: MeterIntervals): number {
  const paces = advance
    .map((a, i) => (endMs[i] - startMs[i] > LONG_MS ? (a / (endMs[i] - startMs[i])) * 1000 : Number.NaN))
    .filter((pace) => !Number.isNaN(pace))
    .sort();
  return paces[paces.length - FEWEST] ?? 0;
}
