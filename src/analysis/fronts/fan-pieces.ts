import { FAN_ON, type FanSpans } from '../types.ts';
import { HOUR_MS, LONG_REST_H } from './front-limits.ts';

/** Fan-on time cut into pieces of an hour or less, in time order; every array is [pieces]. */
export interface FanPieces {
  fromMs: Float64Array;
  toMs: Float64Array;
  midMs: Float64Array;
  hours: Float64Array;
  /** which run a piece belongs to, counted from 0: runs are parted by rests of LONG_REST_H or more */
  run: Int32Array;
  /** first and last moment of each run, [runs] */
  runFromMs: number[];
  runToMs: number[];
}

/** The pieces within [fromMs, toMs). Unknown time counts as rest. */
export function fanPieces(spans: FanSpans, fromMs: number, toMs: number): FanPieces {
  const from: number[] = [];
  const to: number[] = [];
  const run: number[] = [];
  const runFromMs: number[] = [];
  const runToMs: number[] = [];
  for (let i = 0; i < spans.state.length; i++) {
    if (spans.state[i] !== FAN_ON) continue;
    const start = Math.max(spans.startMs[i], fromMs);
    const end = Math.min(spans.endMs[i], toMs);
    if (!(end > start)) continue;
    const last = runToMs.length - 1;
    if (last < 0 || start - runToMs[last] >= LONG_REST_H * HOUR_MS) {
      runFromMs.push(start);
      runToMs.push(end);
    } else runToMs[last] = end;
    const count = Math.ceil((end - start) / HOUR_MS);
    for (let piece = 0; piece < count; piece++) {
      from.push(start + ((end - start) * piece) / count);
      to.push(start + ((end - start) * (piece + 1)) / count);
      run.push(runFromMs.length - 1);
    }
  }
  return {
    fromMs: Float64Array.from(from),
    toMs: Float64Array.from(to),
    midMs: Float64Array.from(from, (start, i) => (start + to[i]) / 2),
    hours: Float64Array.from(from, (start, i) => (to[i] - start) / HOUR_MS),
    run: Int32Array.from(run),
    runFromMs,
    runToMs,
  };
}
