import { cumulativeFanHours, fanHoursBetween } from '../fan/spans.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import type { BinMoisture, FanSpans } from '../types.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Days in still air this far off still tell an hour's moisture: at the usual drying rate a third of a point lies between. */
const STILL_GAP_MS = 5 * DAY_MS;
/** Days read in moving air, which lean towards the air, tell only what lies near. */
const ANY_GAP_MS = 3 * DAY_MS;

/** Mean moisture of the grain at some times. */
export interface MoistureCurve {
  /** [times], fraction, wet basis; NaN where it is not known */
  moistureWb: Float64Array;
  /** from the cables day by day; between the moistures at start and end, by fan hours; or not at all */
  from: 'days' | 'ends' | null;
}

/**
 * The bin's mean moisture at any time: between its days of still air, else between all its days; before the first and
 * after the last as at the start and at the end. Where no cable tells moistures, on a straight line over the fan hours
 * between the moistures that tickets or season.yaml state.
 */
export function grainMoistureAt(
  moisture: Pick<BinMoisture, 'daily' | 'start' | 'end'>,
  fill: FillTimes,
  spans: FanSpans,
  atMs: Float64Array,
): MoistureCurve {
  const { daily, start, end } = moisture;
  const known = daily.filter((day) => day.mean !== null);
  if (known.length > 0) return { moistureWb: byDays(known, start.value, end.value, atMs), from: 'days' };
  if (start.value === null || end.value === null) {
    return { moistureWb: new Float64Array(atMs.length).fill(Number.NaN), from: null };
  }
  const fromMs = fill.filledMs ?? spans.startMs[0];
  const toMs = fill.wholeUntilMs ?? spans.endMs[spans.endMs.length - 1];
  const whole = fanHoursBetween(spans, fromMs, toMs);
  const [before] = cumulativeFanHours(spans, Float64Array.of(fromMs));
  const change = end.value - start.value;
  const first = start.value;
  const moistureWb = cumulativeFanHours(spans, atMs).map((hours) => {
    const part = whole > 0 ? Math.min(1, Math.max(0, (hours - before) / whole)) : 0;
    return first + part * change;
  });
  return { moistureWb, from: 'ends' };
}

/** Moistures of days at times; those of `start` and `end` before the first day and after the last. */
export function byDays(
  days: readonly { dayMs: number; mean: number | null; stillAir: boolean }[],
  start: number | null,
  end: number | null,
  atMs: Float64Array,
): Float64Array {
  const curve = (of: typeof days, gapMs: number) =>
    betweenReadings(
      Float64Array.from(of, (day) => day.dayMs + DAY_MS / 2),
      Float64Array.from(of, (day) => day.mean ?? Number.NaN),
      atMs,
      gapMs,
    );
  const told = days.filter((day) => day.mean !== null);
  if (told.length === 0) return new Float64Array(atMs.length).fill(Number.NaN);
  const still = curve(
    told.filter((day) => day.stillAir),
    STILL_GAP_MS,
  );
  const any = curve(told, ANY_GAP_MS);
  const firstMs = told[0].dayMs + DAY_MS / 2;
  const lastMs = told[told.length - 1].dayMs + DAY_MS / 2;
  return still.map((value, i) => {
    if (!Number.isNaN(value)) return value;
    if (!Number.isNaN(any[i])) return any[i];
    if (atMs[i] < firstMs) return start ?? Number.NaN;
    return atMs[i] > lastMs ? (end ?? Number.NaN) : Number.NaN;
  });
}
