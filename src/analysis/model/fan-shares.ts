import { HOUR_MS } from '../fronts/front-limits.ts';
import { FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';

/** A bin's fan as logged, hour by hour; arrays are [hours]. */
export interface FanShares {
  /** part of each hour in which any fan ran, 0 to 1; unknown time counts as off */
  on: Float64Array;
  /** part of each hour of which the log says nothing */
  unknown: Float64Array;
}

export function fanShares(spans: FanSpans | null, startMs: number, count: number): FanShares {
  const on = new Float64Array(count);
  const unknown = new Float64Array(count);
  if (spans === null || spans.state.length === 0) return { on, unknown: unknown.fill(1) };
  const before = (spans.startMs[0] - startMs) / HOUR_MS;
  const after = (spans.endMs[spans.endMs.length - 1] - startMs) / HOUR_MS;
  add(unknown, 0, before);
  add(unknown, after, count);
  for (let i = 0; i < spans.state.length; i++) {
    const into = spans.state[i] === FAN_ON ? on : spans.state[i] === FAN_UNKNOWN ? unknown : null;
    if (into !== null) add(into, (spans.startMs[i] - startMs) / HOUR_MS, (spans.endMs[i] - startMs) / HOUR_MS);
  }
  return { on, unknown };
}

/** Add a stretch, in hours from the first, to the parts of the hours that it covers. */
function add(into: Float64Array, from: number, to: number): void {
  const last = Math.min(to, into.length);
  for (let hour = Math.max(0, Math.floor(from)); hour < last; hour++) {
    into[hour] += Math.max(0, Math.min(to, hour + 1) - Math.max(from, hour));
  }
}
