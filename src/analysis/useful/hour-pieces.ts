import { toLocalMs, type Zone } from '../../base/zone.ts';
import type { FanSpans, Span } from '../types.ts';

const HOUR_MS = 3_600_000;

/** Time in one state cut at the local clock's full hours; every array is [pieces], rising. */
export interface HourPieces {
  fromMs: Float64Array;
  toMs: Float64Array;
  midMs: Float64Array;
  hours: Float64Array;
}

/** The time that the fans spent in a state within [fromMs, toMs), ms UTC, in pieces of an hour or less. */
export function hourPieces(
  spans: FanSpans,
  state: number,
  zone: Zone,
  fromMs = Number.NEGATIVE_INFINITY,
  toMs = Number.POSITIVE_INFINITY,
): HourPieces {
  const from: number[] = [];
  const to: number[] = [];
  for (const stretch of stretchesOf(spans, state, fromMs, toMs)) {
    for (let at = stretch.fromMs; at < stretch.toMs; ) {
      const local = toLocalMs(zone, at);
      const next = Math.min(stretch.toMs, at + HOUR_MS - (((local % HOUR_MS) + HOUR_MS) % HOUR_MS));
      from.push(at);
      to.push(next);
      at = next;
    }
  }
  return {
    fromMs: Float64Array.from(from),
    toMs: Float64Array.from(to),
    midMs: Float64Array.from(from, (start, i) => (start + to[i]) / 2),
    hours: Float64Array.from(from, (start, i) => (to[i] - start) / HOUR_MS),
  };
}

/** Spans of a state joined where they touch: a change of power alone is no cut. */
function stretchesOf(spans: FanSpans, state: number, fromMs: number, toMs: number): Span[] {
  const out: Span[] = [];
  for (let i = 0; i < spans.state.length; i++) {
    if (spans.state[i] !== state) continue;
    const span = { fromMs: Math.max(fromMs, spans.startMs[i]), toMs: Math.min(toMs, spans.endMs[i]) };
    if (!(span.toMs > span.fromMs)) continue;
    const last = out.at(-1);
    if (last !== undefined && last.toMs === span.fromMs) last.toMs = span.toMs;
    else out.push(span);
  }
  return out;
}
