import { FLAGS } from '../../tables/flags.ts';

export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

/** One column of one sensor in time order; every array is [readings]. */
export interface Track {
  timeMs: Float64Array;
  /** SI; NaN is missing */
  values: Float64Array;
  /** 1 where there is a value that nothing has been said against so far */
  use: Uint8Array;
}

/** What the loader has already said against a reading: such a one takes part in no check. */
const SET_BY_LOADER = FLAGS.duplicate | FLAGS.clock | FLAGS.spike;

/**
 * @param flags  bits that the loader set, [readings]
 */
export function trackOf(timeMs: Float64Array, values: Float64Array, flags: ArrayLike<number>): Track {
  const use = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]) && !(flags[i] & SET_BY_LOADER)) use[i] = 1;
  return { timeMs, values, use };
}

/** Positions that are in use, rising. */
export function used(track: Track): Int32Array {
  const out = new Int32Array(track.use.length);
  let count = 0;
  for (let i = 0; i < track.use.length; i++) if (track.use[i] === 1) out[count++] = i;
  return out.subarray(0, count);
}

/** Take positions out of use. */
export function leaveOut(track: Track, positions: Iterable<number>): void {
  for (const i of positions) track.use[i] = 0;
}
