import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans, type Span } from '../types.ts';
import { pushSpan, spanList, toFanSpans } from './spans.ts';

/**
 * Lay a second log under a first: where the first is unknown the second speaks, and within `instead` it always does.
 * The result spans the time of both.
 */
export function overlay(first: FanSpans, second: FanSpans, instead: readonly Span[] = []): FanSpans {
  if (second.state.length === 0) return first;
  const edges = new Set<number>();
  for (const spans of [first, second]) {
    for (const ms of spans.startMs) edges.add(ms);
    for (const ms of spans.endMs) edges.add(ms);
  }
  for (const { fromMs, toMs } of instead) edges.add(fromMs).add(toMs);
  const cuts = Float64Array.from(edges).sort();
  const list = spanList();
  let a = 0;
  let b = 0;
  let c = 0;
  for (let k = 0; k + 1 < cuts.length; k++) {
    const ms = cuts[k];
    while (a < first.state.length && first.endMs[a] <= ms) a += 1;
    while (b < second.state.length && second.endMs[b] <= ms) b += 1;
    while (c < instead.length && instead[c].toMs <= ms) c += 1;
    const stateA = a < first.state.length && first.startMs[a] <= ms ? first.state[a] : FAN_UNKNOWN;
    const stateB = b < second.state.length && second.startMs[b] <= ms ? second.state[b] : FAN_UNKNOWN;
    const swap = c < instead.length && instead[c].fromMs <= ms && stateB !== FAN_UNKNOWN;
    if (stateA === FAN_UNKNOWN || swap) pushSpan(list, ms, cuts[k + 1], stateB, powerOf(second, b, stateB));
    else pushSpan(list, ms, cuts[k + 1], stateA, powerOf(first, a, stateA));
  }
  return toFanSpans(list);
}

function powerOf(spans: FanSpans, index: number, state: number): number {
  if (state === FAN_UNKNOWN) return Number.NaN;
  return state === FAN_OFF ? 0 : spans.powerW[index];
}

/** Stretches of at least `leastMs` in which `first` says off while `second` runs: a sensor that died, maybe in the middle of a run. */
export function contradictions(first: FanSpans, second: FanSpans, leastMs: number): Span[] {
  const found: Span[] = [];
  let a = 0;
  for (let b = 0; b < second.state.length; b++) {
    if (second.state[b] !== FAN_ON) continue;
    while (a < first.state.length && first.endMs[a] <= second.startMs[b]) a += 1;
    for (let i = a; i < first.state.length && first.startMs[i] < second.endMs[b]; i++) {
      if (first.state[i] !== FAN_OFF) continue;
      const fromMs = Math.max(first.startMs[i], second.startMs[b]);
      const toMs = Math.min(first.endMs[i], second.endMs[b]);
      if (toMs - fromMs >= leastMs) found.push({ fromMs, toMs });
    }
  }
  return found;
}
