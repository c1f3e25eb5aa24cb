import type { Bin } from '../../season/season.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import type { BinMoisture, FanSpans } from '../types.ts';
import { byDays, grainMoistureAt } from '../useful/grain-moisture-at.ts';

/** Under so many fan hours the air took no part in how the moisture went. */
const LEAST_FAN_H = 1;

export interface MeanMoistureOf {
  moisture: Pick<BinMoisture, 'daily' | 'start' | 'end'>;
  goal: Bin['goal'];
  fill: FillTimes;
  spans: FanSpans | null;
  /** middles of the steps, ms UTC, [steps] */
  atMs: Float64Array;
}

/**
 * The bin's mean moisture at the steps: by the cables' days; else from start to end by fan hours, or by time where no log tells
 * those; else that of one moment throughout, where the fan was not there to change it.
 *
 * @returns  [steps], fraction, wet basis; NaN where not known, with why
 */
export function meanMoistureAt({ moisture, goal, fill, spans, atMs }: MeanMoistureOf): {
  moistureWb: Float64Array;
  why: string | null;
} {
  const { start, end, daily } = moisture;
  if (daily.some((day) => day.mean !== null)) {
    const moistureWb =
      spans === null
        ? byDays(daily, start.value, end.value, atMs)
        : grainMoistureAt(moisture, fill, spans, atMs).moistureWb;
    return { moistureWb, why: null };
  }
  if (start.value !== null && end.value !== null) {
    const fromMs = fill.filledMs ?? atMs[0];
    const toMs = fill.wholeUntilMs ?? atMs[atMs.length - 1];
    if (spans !== null && fanHoursBetween(spans, fromMs, toMs) >= LEAST_FAN_H) {
      return { moistureWb: grainMoistureAt(moisture, fill, spans, atMs).moistureWb, why: null };
    }
    return { moistureWb: straight(start.value, end.value, fromMs, toMs, atMs), why: null };
  }
  const one = start.value ?? end.value;
  const none = (why: string) => ({ moistureWb: new Float64Array(atMs.length).fill(Number.NaN), why });
  if (one === null) return none('No moisture of the grain is known.');
  if (goal === 'dry' || goal === 'condition') return none(oneMoment(moisture));
  return { moistureWb: new Float64Array(atMs.length).fill(one), why: null };
}

function oneMoment({ start }: Pick<BinMoisture, 'start'>): string {
  return `Only the moisture at the ${start.value === null ? 'end' : 'start'} is known, and the fan was run to change it.`;
}

function straight(start: number, end: number, fromMs: number, toMs: number, atMs: Float64Array): Float64Array {
  return atMs.map((ms) => {
    const part = toMs > fromMs ? Math.min(1, Math.max(0, (ms - fromMs) / (toMs - fromMs))) : 0;
    return start + part * (end - start);
  });
}
