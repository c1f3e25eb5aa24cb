import { FAN_UNKNOWN, type FanSpans } from '../types.ts';

/**
 * Say within which window each start and stop lies: between the sample before and the one that shows it, or within a step
 * of the meter that placed it. Other edges (a log of switchings, where unknown time begins) are as told.
 *
 * @param timeMs   [samples], ms UTC, rising: the sampled log that told the runs; empty where none did
 * @param told     that log's own runs; an edge elsewhere was placed by a meter
 * @param judgedMs edges of that log that a meter has judged and left where they were: placed by it too
 * @param stepMs   running time for one step of the meter, ms; 0 where no meter placed an edge
 */
export function withEdgeWindows(
  spans: FanSpans,
  timeMs: Float64Array,
  told: FanSpans | null,
  judgedMs: ReadonlySet<number>,
  stepMs: number,
): FanSpans {
  const own = new Set(Array.from(told?.startMs ?? []).filter((ms) => !judgedMs.has(ms)));
  const startFromMs = spans.startMs.slice();
  const startToMs = spans.startMs.slice();
  let i = 0;
  for (let k = 1; k < spans.state.length; k++) {
    if (!isEdge(spans, k)) continue;
    const ms = spans.startMs[k];
    while (i < timeMs.length && timeMs[i] < ms) i += 1;
    if (i > 0 && timeMs[i] === ms && own.has(ms)) startFromMs[k] = timeMs[i - 1];
    else if (stepMs > 0) {
      startFromMs[k] = ms - stepMs;
      startToMs[k] = ms + stepMs;
    }
  }
  return { ...spans, startFromMs, startToMs, sampledMs: timeMs };
}

/** A start or a stop: the state before and the state after are both known, and differ. */
export function isEdge({ state }: FanSpans, k: number): boolean {
  return k > 0 && state[k] !== state[k - 1] && state[k] !== FAN_UNKNOWN && state[k - 1] !== FAN_UNKNOWN;
}

const DAY_MS = 24 * 3_600_000;

/** Share of moments (starts, or stops) that follow the one before at the same time of day, to `withinMs`. */
export function byTheClock(ms: readonly number[], withinMs: number): number {
  if (ms.length < 3) return 0;
  let same = 0;
  for (let i = 1; i < ms.length; i++) {
    const rest = (ms[i] - ms[i - 1]) % DAY_MS;
    if (ms[i] - ms[i - 1] > DAY_MS / 2 && Math.min(rest, DAY_MS - rest) <= withinMs) same += 1;
  }
  return same / (ms.length - 1);
}
