import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { FanSpans } from '../types.ts';
import { STEP_H, STEP_MS, type StepGrid } from './step-grid.ts';

/** Hours of each step in which a fan ran or may have run, [steps]: where no log tells, all of them. @param spans  null: not of every fan is there a log */
export function blownHours(spans: FanSpans | null, { startMs, count }: StepGrid): Float64Array {
  if (spans === null || spans.startMs.length === 0) return new Float64Array(count).fill(STEP_H);
  const beginMs = spans.startMs[0];
  const endMs = spans.endMs[spans.endMs.length - 1];
  return Float64Array.from({ length: count }, (_, i) => {
    const fromMs = startMs + i * STEP_MS;
    if (fromMs < beginMs || fromMs + STEP_MS > endMs) return STEP_H;
    return fanHoursBetween(spans, fromMs, fromMs + STEP_MS) + unknownHoursBetween(spans, fromMs, fromMs + STEP_MS);
  });
}
