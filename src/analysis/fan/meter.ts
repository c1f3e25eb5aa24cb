import type { Series } from './fan-log.ts';
import { middle } from './usual-interval.ts';

const HOUR_MS = 3_600_000;
/** Readings further apart than this tell how long a fan ran, but not when. */
export const LONG_MS = 2 * HOUR_MS;

/** What a running meter advanced between two readings that can be believed. Arrays are [intervals], following each other without hole. */
export interface MeterIntervals {
  startMs: Float64Array;
  endMs: Float64Array;
  /** J or s; NaN where the meter cannot tell */
  advance: Float64Array;
  /** 1 where the meter was reset: the advance is what it counted since, so at least that */
  reset: Uint8Array;
  /** smallest step of the meter that matters, J or s; 0 for a fine one */
  resolution: number;
  /** whole sentences for the data-quality page */
  notes: string[];
}

export interface MeterKind {
  /** `energy meter`, `run-time meter` */
  name: string;
  /** unit people read on it, and its size in SI */
  unit: string;
  unitSi: number;
  /** what it can advance at most, J/s or s/s */
  mostPerSecond: number;
}

/**
 * A running meter cut into intervals, its faults taken out.
 *
 * - One low (or impossibly high) reading between two that fit each other is a misreading and dropped.
 * - A jump back from just under a power of ten (in the unit on its dial) is a rollover: the count went on.
 * - Any other jump back is a reset: the new reading is what it counted since, at least; not known where that is impossible.
 * - An advance beyond what the motor could use (and the meter's step) is not known.
 */
export function meterIntervals(series: Series, kind: MeterKind): MeterIntervals {
  const notes: string[] = [];
  const { timeMs, value } = withoutMisreadings(series, kind, notes);
  const count = Math.max(0, value.length - 1);
  const advance = new Float64Array(count);
  const reset = new Uint8Array(count);
  const show = (si: number) => `${Number((si / kind.unitSi).toPrecision(7))} ${kind.unit}`;
  const resolution = believedStep(stepOf(value), timeMs, kind);
  let impossible = 0;
  for (let i = 0; i < count; i++) {
    const most = mostAdvance(timeMs[i], timeMs[i + 1], kind) + 2 * resolution;
    const step = value[i + 1] - value[i];
    if (step >= 0) {
      advance[i] = step <= most ? step : Number.NaN;
      if (step > most) impossible += 1;
      continue;
    }
    const full = 10 ** Math.ceil(Math.log10(value[i] / kind.unitSi + 1e-9)) * kind.unitSi;
    const rolled = full - value[i] + value[i + 1];
    if (full >= 1000 * kind.unitSi && value[i] > 0.9 * full && rolled <= most) {
      advance[i] = rolled;
      notes.push(`The ${kind.name} rolled over from ${show(value[i])} to ${show(value[i + 1])}; the count goes on.`);
    } else {
      reset[i] = 1;
      advance[i] = value[i + 1] >= 0 && value[i + 1] <= most ? value[i + 1] : Number.NaN;
      const since = Number.isNaN(advance[i])
        ? 'what it counted in between is not known'
        : 'the new reading is taken as counted since';
      notes.push(`The ${kind.name} was reset: it fell from ${show(value[i])} to ${show(value[i + 1])}; ${since}.`);
    }
  }
  if (impossible > 0) {
    notes.push(
      `The ${kind.name} jumped ahead ${impossible === 1 ? 'once' : `${impossible} times`} by more than the fan can use; those steps are left out.`,
    );
  }
  return { startMs: timeMs.slice(0, count), endMs: timeMs.slice(1), advance, reset, resolution, notes };
}

function mostAdvance(fromMs: number, toMs: number, kind: MeterKind): number {
  return (kind.mostPerSecond * (toMs - fromMs)) / 1000;
}

function withoutMisreadings(series: Series, kind: MeterKind, notes: string[]): Series {
  const { timeMs, value } = series;
  const step = stepOf(value);
  const fits = (from: number, to: number, i: number, j: number) =>
    to >= from && to - from <= mostAdvance(timeMs[i], timeMs[j], kind) + 2 * step;
  const keep: number[] = [];
  let dropped = 0;
  for (let i = 0; i < value.length; i++) {
    const before = keep[keep.length - 1];
    const odd =
      before !== undefined &&
      i + 1 < value.length &&
      !fits(value[before], value[i], before, i) &&
      fits(value[before], value[i + 1], before, i + 1) &&
      !fits(value[i], value[i + 1], i, i + 1);
    if (odd) dropped += 1;
    else keep.push(i);
  }
  if (dropped > 0)
    notes.push(
      `${dropped} reading${dropped === 1 ? '' : 's'} of the ${kind.name} fit neither neighbour and are left out.`,
    );
  return { timeMs: Float64Array.from(keep, (i) => timeMs[i]), value: Float64Array.from(keep, (i) => value[i]) };
}

/**
 * No step where readings are hours apart and it would be more than an hour's running (or one on the dial): a clock that runs a
 * fan eight hours of each day makes every advance alike, which is the clock's doing and not the meter's.
 */
function believedStep(step: number, timeMs: Float64Array, kind: MeterKind): number {
  const seldom = middle(timeMs.slice(1).map((ms, i) => ms - timeMs[i])) > LONG_MS;
  // `mostPerSecond` of an energy meter is three times the nameplate's.
  const anHour = Math.max(kind.unitSi, mostAdvance(0, HOUR_MS / 3, kind));
  return seldom && step > anHour ? 0 : step;
}

/** A step finer than this part of the usual advance does not matter. */
const FINE_PART = 0.02;

/**
 * The meter's step: its smallest advance, where it recurs and nearly all others are whole multiples of it; else the largest step that
 * measures the advances that recur (a meter of 0.1 h read each quarter hour moves by 0.2 and 0.3 h, never by 0.1); else 0.
 */
function stepOf(value: Float64Array): number {
  const steps: number[] = [];
  for (let i = 1; i < value.length; i++) if (value[i] > value[i - 1]) steps.push(value[i] - value[i - 1]);
  if (steps.length === 0) return 0;
  // Written decimals leave crumbs behind: steps within a millionth of the reading are one.
  const crumb = 1e-9 * Math.abs(value[value.length - 1]);
  const measures = (step: number) => {
    const whole = steps.filter((one) => Math.abs(one / step - Math.round(one / step)) < 0.02 + crumb / step);
    return whole.length >= 0.95 * steps.length;
  };
  const sorted = Float64Array.from(steps.filter((step) => step > 2 * crumb)).sort();
  if (sorted.length === 0) return 0;
  // A step shows again and again; a lone small advance that measures the others is a day of 6 h among days of 12 and 24.
  const again = sorted.length > 1 && sorted[1] - sorted[0] <= 4 * crumb;
  if (again && measures(sorted[0])) return sorted[0];
  const finest = Math.max(4 * crumb, FINE_PART * sorted[sorted.length >> 1]);
  let common = 0;
  for (let i = 1; i < sorted.length; i++) {
    if (sorted[i] - sorted[i - 1] <= 4 * crumb) common = commonStep(common, sorted[i], finest);
  }
  return common >= finest && measures(common) ? common : 0;
}

/** Largest step that measures both within `finest`, by Euclid. */
function commonStep(a: number, b: number, finest: number): number {
  let [large, small] = a > b ? [a, b] : [b, a];
  while (small >= finest) {
    const rest = Math.abs(large - Math.round(large / small) * small);
    [large, small] = [small, rest];
  }
  return large;
}
