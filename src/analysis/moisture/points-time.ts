import { type Estimate, estimate } from '../../base/estimate.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import type { FanSpans, Span } from '../types.ts';
import type { MomentMean } from './moisture-types.ts';

/** The time over which a bin's points were removed, ms UTC, and the fan hours in it. */
export interface PointsTime {
  /** null where nothing says when the grain came, or went */
  fromMs: number | null;
  toMs: number | null;
  fanHours: Estimate;
}

/**
 * From the moment that the start's moisture is of to that of the end: what ran while a bin was being filled took water
 * out too, but the points, which begin once it was full, do not hold it. A moment that no sensor tells is that of the
 * grain as it came or went.
 *
 * @param fanHours  of the bin while it held grain; its interval holds what no log tells
 * @param spans     of the bin's fans together; null: no log tells
 * @param stayed    true: the points hold what the rest lost after the first grain was taken out
 */
export function pointsTime(
  fanHours: Estimate,
  spans: FanSpans | null,
  fill: FillTimes,
  moments: { start: MomentMean; end: MomentMean },
  stayed: boolean,
  unloadedMs: number | null,
): PointsTime {
  const begunMs = fill.begunMs ?? Number.NEGATIVE_INFINITY;
  const goneMs = unloadedMs ?? Number.POSITIVE_INFINITY;
  const fromMs = Math.max(begunMs, momentOf(moments.start, 'fromMs') ?? begunMs);
  const toMs = stayed ? goneMs : Math.min(goneMs, momentOf(moments.end, 'toMs') ?? goneMs);
  return {
    fromMs: Number.isFinite(fromMs) ? fromMs : null,
    toMs: Number.isFinite(toMs) ? toMs : null,
    fanHours: spans === null ? fanHours : without(fanHours, spans, [begunMs, fromMs], [toMs, goneMs]),
  };
}

function without(hours: Estimate, spans: FanSpans, ...apart: readonly [number, number][]): Estimate {
  if (hours.value === null) return hours;
  const sum = (of: typeof fanHoursBetween) => apart.reduce((all, [from, to]) => all + of(spans, from, to), 0);
  const ran = sum(fanHoursBetween);
  const value = Math.max(0, hours.value - ran);
  if (hours.interval === null) return { ...hours, value };
  const [low, high] = hours.interval;
  return estimate(value, Math.max(0, low - ran), Math.max(value, high - ran - sum(unknownHoursBetween)));
}

/** In still air the fan rested around the readings, so its day's outer edge counts; in moving air the day's middle. */
function momentOf({ window, stillAir }: MomentMean, edge: keyof Span): number | null {
  if (window === null) return null;
  return stillAir ? window[edge] : (window.fromMs + window.toMs) / 2;
}
