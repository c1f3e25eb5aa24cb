import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';
import { isEdge } from './edge-windows.ts';
import { onAt } from './spans.ts';

/** Fewer runs or rests than these tell nothing of what two fans do together. */
const FEWEST = 5;

/** Share of one fan's runs (and of its rests) in which another fan ran (rested) too; 0 where too few can be looked at. */
export interface Agreement {
  runs: number;
  rests: number;
}

/** Whether a sample of the other log lies in [fromMs, toMs]; then the first one. */
export function sampleWithin(sampledMs: Float64Array, fromMs: number, toMs: number): number | null {
  const at = firstNotBefore(sampledMs, fromMs);
  return at < sampledMs.length && sampledMs[at] <= toMs ? sampledMs[at] : null;
}

/** Index of the first sample at `ms` or after; the count where there is none. */
export function firstNotBefore(sampledMs: Float64Array, ms: number): number {
  let low = 0;
  let high = sampledMs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sampledMs[middle] < ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * How often `other` is found in the state of `own`: asked at the first sample of `other` after `own` is known to be in it
 * (so that edges, whose moment neither log knows, are left out). Two fans on their own agree by their duty; of two that one
 * controller switches nearly all do.
 */
export function agreement(own: FanSpans, other: FanSpans): Agreement {
  return { runs: share(own, other, FAN_ON), rests: share(own, other, FAN_OFF) };
}

function share(own: FanSpans, other: FanSpans, state: number): number {
  const sampled = other.sampledMs;
  if (sampled === undefined || own.startToMs === undefined || own.startFromMs === undefined) return 0;
  let asked = 0;
  let same = 0;
  for (let k = 0; k + 1 < own.state.length; k++) {
    if (own.state[k] !== state || !isEdge(own, k) || !isEdge(own, k + 1)) continue;
    const ms = sampleWithin(sampled, own.startToMs[k], own.startFromMs[k + 1]);
    if (ms === null) continue;
    const there = onAt(other, ms);
    if (there !== FAN_ON && there !== FAN_OFF) continue;
    asked += 1;
    if (there === state) same += 1;
  }
  return asked < FEWEST ? 0 : same / asked;
}
