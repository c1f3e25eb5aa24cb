import { FAN_UNKNOWN } from '../types.ts';

const HOUR_MS = 3_600_000;
const LEAST_SAMPLES = 24;
const LEAST_MS = 6 * HOUR_MS;
const LEAST_PAIRS = 50;
const LIVING_REPEATS = 0.1;

/**
 * Find a sensor that died: a stretch of one and the same value in a log whose values otherwise hardly ever repeat.
 *
 * On and off values are judged apart, for an idle fan's current may well be exactly zero all winter: then a zero tells
 * nothing. A stretch is frozen when it has at least 24 samples over 6 hours without the least change while outside of
 * such stretches fewer than one neighbour pair in ten of that state repeats (of at least 50 pairs).
 *
 * @param timeMs  [samples], ms UTC, rising
 * @param value   [samples]
 * @param state   [samples], FAN_OFF or FAN_ON; frozen samples are set to FAN_UNKNOWN in place
 * @returns       hours set to unknown
 */
export function markFrozen(timeMs: Float64Array, value: Float64Array, state: Uint8Array): number {
  const stretches: { from: number; to: number }[] = [];
  const pairs = [0, 0];
  const repeats = [0, 0];
  for (let from = 0; from < value.length; ) {
    let to = from;
    while (to + 1 < value.length && value[to + 1] === value[from]) to += 1;
    const long = to - from + 1 >= LEAST_SAMPLES && timeMs[to] - timeMs[from] >= LEAST_MS;
    if (long) stretches.push({ from, to });
    else repeats[state[from]] += to - from;
    const inside = long ? 0 : to - from;
    pairs[state[from]] += inside;
    if (to + 1 < value.length && state[to + 1] === state[from]) pairs[state[from]] += 1;
    from = to + 1;
  }
  let hours = 0;
  for (const { from, to } of stretches) {
    const kind = state[from];
    if (pairs[kind] < LEAST_PAIRS || repeats[kind] >= LIVING_REPEATS * pairs[kind]) continue;
    state.fill(FAN_UNKNOWN, from, to + 1);
    hours += (timeMs[Math.min(to + 1, timeMs.length - 1)] - timeMs[from]) / HOUR_MS;
  }
  return hours;
}
