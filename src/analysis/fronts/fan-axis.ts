import { cumulativeFanHours, momentOfFanHour } from '../fan/spans.ts';
import type { FanSpans } from '../types.ts';
import { dayAround } from './day-mean.ts';
import { BEHIND_TO_H, HOUR_MS } from './front-limits.ts';
import { likelyRunning } from './likely-running.ts';

/** Step of the fan-hour axis, h. */
export const AXIS_STEP_H = 0.5;
/** Least window of a running mean, fan hours: where the fan ran less in a day. */
const LEAST_WINDOW_H = 4;

/**
 * Fan hours counted from the start of a campaign, and what a day of the clock holds of them. Over holes of the fan log they are
 * likely ones, for the order of what was read within them (`likelyRunning`).
 */
export interface FanAxis {
  startMs: number;
  /** fan hours from the campaign's start to the end of what is looked at */
  lengthH: number;
  /** fan hours up to which an arrival is looked for, <= lengthH: what comes after only shows what lies behind a front */
  searchH: number;
  /** fan hours since the start, at times in any order; negative before */
  hoursAt(timesMs: Float64Array): Float64Array;
  /** clock time of a fan hour >= 0; null past the log */
  momentOf(fanHour: number): number | null;
  /** fan-on hours of a day of the clock around each step, [0, lengthH] by AXIS_STEP_H */
  windowH: Float64Array;
  /** clock time of the end of the axis, ms UTC */
  endMs: number;
}

/**
 * @param log      of the fan
 * @param startMs  start of the campaign
 * @param untilMs  end of where arrivals are looked for, in the same run
 * @param runFromMs, runToMs  the run
 */
export function fanAxis(log: FanSpans, startMs: number, untilMs: number, runFromMs: number, runToMs: number): FanAxis {
  const spans = likelyRunning(log, startMs);
  const [startH, untilH, runToH] = cumulativeFanHours(spans, Float64Array.of(startMs, untilMs, runToMs));
  const searchH = untilH - startH;
  const lengthH = Math.min(searchH + BEHIND_TO_H, runToH - startH);
  const moments = stepMoments(spans, startMs, lengthH);
  const days = Array.from(moments, (ms) => dayAround(ms, runFromMs, runToMs));
  const from = cumulativeFanHours(
    spans,
    Float64Array.from(days, (day) => day[0]),
  );
  const to = cumulativeFanHours(
    spans,
    Float64Array.from(days, (day) => Math.min(day[1], runToMs)),
  );
  return {
    startMs,
    lengthH,
    searchH,
    hoursAt: (timesMs) => cumulativeFanHours(spans, timesMs).map((hours) => hours - startH),
    momentOf: (fanHour) => momentOfFanHour(spans, startMs, fanHour),
    endMs: moments[moments.length - 1],
    windowH: from.map((hours, i) => Math.max(LEAST_WINDOW_H, to[i] - hours)),
  };
}

/** Clock time at each step of the axis; one pass from step to step. */
function stepMoments(spans: FanSpans, startMs: number, lengthH: number): Float64Array {
  const count = Math.floor(lengthH / AXIS_STEP_H + 1e-9) + 1;
  const out = new Float64Array(count);
  let last = startMs;
  for (let i = 0; i < count; i++) {
    if (i > 0) last = momentOfFanHour(spans, last, AXIS_STEP_H) ?? last + AXIS_STEP_H * HOUR_MS;
    out[i] = last;
  }
  return out;
}
