import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans, type Span } from '../types.ts';

const HOUR_MS = 3_600_000;

/** Spans while they are being put together: neighbours of one state and power become one span. */
export interface SpanList {
  startMs: number[];
  endMs: number[];
  state: number[];
  powerW: number[];
}

export function spanList(): SpanList {
  return { startMs: [], endMs: [], state: [], powerW: [] };
}

/** Append a stretch that begins where the list ends. Empty stretches are left out, equal neighbours joined. */
export function pushSpan(list: SpanList, startMs: number, endMs: number, state: number, powerW: number): void {
  if (!(endMs > startMs)) return;
  const last = list.state.length - 1;
  if (last >= 0 && list.endMs[last] === startMs && list.state[last] === state && Object.is(list.powerW[last], powerW)) {
    list.endMs[last] = endMs;
    return;
  }
  list.startMs.push(startMs);
  list.endMs.push(endMs);
  list.state.push(state);
  list.powerW.push(powerW);
}

/** A fan that ran throughout a stretch, at a power that nobody knows. */
export const onThroughout = ({ fromMs, toMs }: Span): FanSpans => ({
  startMs: Float64Array.of(fromMs),
  endMs: Float64Array.of(toMs),
  state: Uint8Array.of(FAN_ON),
  powerW: Float64Array.of(Number.NaN),
});

/** The list as typed arrays, [spans] each. */
export function toFanSpans(list: SpanList): FanSpans {
  return {
    startMs: Float64Array.from(list.startMs),
    endMs: Float64Array.from(list.endMs),
    state: Uint8Array.from(list.state),
    powerW: Float64Array.from(list.powerW),
  };
}

/** Index of the span that holds an instant; -1 before the first, `spans` after the last. */
export function spanIndexAt(spans: FanSpans, ms: number): number {
  const { startMs, endMs } = spans;
  const count = startMs.length;
  if (count === 0 || ms < startMs[0]) return -1;
  if (ms >= endMs[count - 1]) return count;
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (startMs[middle] <= ms) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** FAN_OFF, FAN_ON or FAN_UNKNOWN at an instant, ms UTC; unknown outside the log. */
export function onAt(spans: FanSpans, ms: number): number {
  const index = spanIndexAt(spans, ms);
  return index < 0 || index >= spans.state.length ? FAN_UNKNOWN : spans.state[index];
}

/** Hours that the spans of a state have within [fromMs, toMs). */
function stateHoursBetween(spans: FanSpans, state: number, fromMs: number, toMs: number): number {
  let sumMs = 0;
  for (let i = Math.max(0, spanIndexAt(spans, fromMs)); i < spans.state.length && spans.startMs[i] < toMs; i++) {
    if (spans.state[i] !== state) continue;
    sumMs += Math.max(0, Math.min(spans.endMs[i], toMs) - Math.max(spans.startMs[i], fromMs));
  }
  return sumMs / HOUR_MS;
}

/** Hours with the fan on within [fromMs, toMs), ms UTC; of the whole log where neither is given. Unknown time counts nothing. */
export function fanHoursBetween(
  spans: FanSpans,
  fromMs = Number.NEGATIVE_INFINITY,
  toMs = Number.POSITIVE_INFINITY,
): number {
  return stateHoursBetween(spans, FAN_ON, fromMs, toMs);
}

/** Hours within [fromMs, toMs), ms UTC, that the log says nothing of although it has begun and not yet ended; of the whole log where neither is given. */
export function unknownHoursBetween(
  spans: FanSpans,
  fromMs = Number.NEGATIVE_INFINITY,
  toMs = Number.POSITIVE_INFINITY,
): number {
  return stateHoursBetween(spans, FAN_UNKNOWN, fromMs, toMs);
}

/** How often the fan went from off, from unknown or from the log's first moment to on. */
export function startsOf(spans: FanSpans): number {
  let starts = 0;
  for (let i = 0; i < spans.state.length; i++) {
    if (spans.state[i] === FAN_ON && (i === 0 || spans.state[i - 1] !== FAN_ON)) starts += 1;
  }
  return starts;
}

/** A pointer into the spans that follows times; rising times cost one pass, others a search. */
function follower(spans: FanSpans): (ms: number) => number {
  let index = -1;
  let last = Number.NEGATIVE_INFINITY;
  return (ms) => {
    if (ms < last) index = spanIndexAt(spans, ms);
    const count = spans.startMs.length;
    while (index + 1 < count && spans.startMs[index + 1] <= ms) index += 1;
    if (index === count - 1 && count > 0 && ms >= spans.endMs[index]) {
      last = ms;
      return count;
    }
    last = ms;
    return index;
  };
}

/** On hours before each span, [spans + 1]; the last is the season's. */
function onHoursBefore(spans: FanSpans): Float64Array {
  const before = new Float64Array(spans.state.length + 1);
  for (let i = 0; i < spans.state.length; i++) {
    const hours = spans.state[i] === FAN_ON ? (spans.endMs[i] - spans.startMs[i]) / HOUR_MS : 0;
    before[i + 1] = before[i] + hours;
  }
  return before;
}

/**
 * Fan hours since the first span began, at each time.
 *
 * @param timesMs  [times], ms UTC, best rising
 * @returns        [times], hours; 0 before the log, the whole after it; unknown time adds nothing; NaN for a NaN time
 */
export function cumulativeFanHours(spans: FanSpans, timesMs: Float64Array): Float64Array {
  const before = onHoursBefore(spans);
  const count = spans.state.length;
  const at = follower(spans);
  return timesMs.map((ms) => {
    if (Number.isNaN(ms)) return Number.NaN;
    const index = at(ms);
    if (index < 0) return 0;
    if (index >= count) return before[count];
    return before[index] + (spans.state[index] === FAN_ON ? (ms - spans.startMs[index]) / HOUR_MS : 0);
  });
}

/**
 * Hours since the fan last ran, at each time: how long the air between the kernels has stood still.
 *
 * @param timesMs  [times], ms UTC, best rising
 * @returns        [times], hours: 0 while on; Infinity where the log has shown it off from its first moment;
 *                 NaN while unknown, after unknown time that no run has followed, and outside the log
 */
export function stillHoursAt(spans: FanSpans, timesMs: Float64Array): Float64Array {
  const count = spans.state.length;
  // When the fan last ran, as each off span begins: NaN not known, -Infinity never in this log.
  const stopMs = new Float64Array(count);
  let stopped = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    if (spans.state[i] === FAN_ON) stopped = spans.endMs[i];
    else if (spans.state[i] === FAN_UNKNOWN) stopped = Number.NaN;
    stopMs[i] = stopped;
  }
  const at = follower(spans);
  return timesMs.map((ms) => {
    const index = Number.isNaN(ms) ? -1 : at(ms);
    if (index < 0 || index >= count) return Number.NaN;
    if (spans.state[index] === FAN_ON) return 0;
    if (spans.state[index] === FAN_OFF) return (ms - stopMs[index]) / HOUR_MS;
    return Number.NaN;
  });
}

/**
 * The moment at which `fanHours` on hours have passed since `fromMs`: the inverse of fanHoursBetween.
 *
 * @returns ms UTC; null where the log ends before
 */
export function momentOfFanHour(spans: FanSpans, fromMs: number, fanHours: number): number | null {
  if (!(fanHours >= 0)) return null;
  if (fanHours === 0) return fromMs;
  let leftMs = fanHours * HOUR_MS;
  for (let i = Math.max(0, spanIndexAt(spans, fromMs)); i < spans.state.length; i++) {
    if (spans.state[i] !== FAN_ON) continue;
    const from = Math.max(fromMs, spans.startMs[i]);
    const length = spans.endMs[i] - from;
    if (length <= 0) continue;
    if (leftMs <= length) return from + leftMs;
    leftMs -= length;
  }
  return null;
}
