import { FAN_OFF, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import { pushSpan, spanList, toFanSpans } from './spans.ts';
import { middle, usualIntervals } from './usual-interval.ts';

/** Longest interval, in usual ones, over which a sample is believed. */
export const GAP_INTERVALS = 3;
const FEWEST_SWITCHINGS = 6;
const REPEATS_OF_REGULAR = 0.7;
/** No sampler reads a fan more seldom than this, ms; a timer may switch it as regularly as a clock. */
const LONGEST_SAMPLING_MS = 3 * 3_600_000;

export interface SampledRuns {
  spans: FanSpans;
  /** true: each sample tells a switching, so a long interval is a long run or rest and no gap */
  switchings: boolean;
}

/**
 * Runs out of samples that say on or off: a sample holds until the next; an interval longer than three usual ones is unknown.
 *
 * A log that strictly alternates between on and off at irregular intervals is a log of switchings: it writes when
 * the fan starts or stops and at no other time, so no interval of it is a gap. (A sampled log repeats itself.)
 * Its last row may say once more how the fan stood when the log was read out.
 *
 * Such a log's last word stands until the season's data end: off after "off"; after "on" it is not known how long.
 *
 * @param timeMs   [samples], ms UTC, rising
 * @param state    [samples], FAN_OFF, FAN_ON or FAN_UNKNOWN (a sample not to be believed)
 * @param powerW   [samples], electric power while on
 * @param endMs    where the season's data end, ms UTC; NaN where not known
 */
export function sampledRuns(
  timeMs: Float64Array,
  state: Uint8Array,
  powerW: Float64Array,
  endMs = Number.NaN,
): SampledRuns {
  const switchings = isSwitchingLog(timeMs, state);
  const usual = switchings ? null : usualIntervals(timeMs);
  const list = spanList();
  for (let i = 0; i + 1 < timeMs.length; i++) {
    const gap = usual !== null && timeMs[i + 1] - timeMs[i] > GAP_INTERVALS * usual[i];
    const own = gap ? FAN_UNKNOWN : state[i];
    const power = own === FAN_UNKNOWN ? Number.NaN : own === 1 ? powerW[i] : 0;
    pushSpan(list, timeMs[i], timeMs[i + 1], own, power);
  }
  const last = timeMs.length - 1;
  if (switchings && endMs > timeMs[last]) {
    const off = state[last] === FAN_OFF;
    pushSpan(list, timeMs[last], endMs, off ? FAN_OFF : FAN_UNKNOWN, off ? 0 : Number.NaN);
  }
  return { spans: toFanSpans(list), switchings };
}

function isSwitchingLog(timeMs: Float64Array, state: Uint8Array): boolean {
  const rows = timeMs.length;
  const closed = rows > FEWEST_SWITCHINGS && state[rows - 1] === state[rows - 2];
  const count = closed ? rows - 1 : rows;
  if (count < 2) return false;
  for (let i = 1; i < count; i++) {
    if (state[i] === state[i - 1] || state[i] === FAN_UNKNOWN) return false;
  }
  const gaps = Float64Array.from({ length: count - 1 }, (_, i) => timeMs[i + 1] - timeMs[i]);
  const usual = middle(gaps);
  // Regular samples of a fan that changes with every one of them are samples all the same.
  const regular = gaps.filter((gap) => Math.abs(gap - usual) <= 0.05 * usual).length;
  return usual > LONGEST_SAMPLING_MS || (count >= FEWEST_SWITCHINGS && regular < REPEATS_OF_REGULAR * gaps.length);
}
