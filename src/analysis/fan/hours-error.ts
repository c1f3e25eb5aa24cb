import { FAN_ON, type FanSpans, type Span } from '../types.ts';
import { byTheClock, isEdge } from './edge-windows.ts';
import { fanHoursBetween, startsOf } from './spans.ts';

const HOUR_MS = 3_600_000;
/** Steps of meters and clocks of loggers, which no log shows, as a share of the hours; a working assumption, from memory. */
const CLOCK_REL_SD = 0.001;

/**
 * Standard error of a fan's hours. Each start and each stop is unsure on its own, those of a clock that switches at one time of day all together, for they
 * meet the samples at one place; hours told by an energy meter over long intervals by how well its pace is known.
 *
 * @param edgeMs     standard error of a start or stop, ms
 * @param byPace     stretches whose hours an energy meter told by its pace, but not when in them
 * @param paceRelSd  relative standard error of that meter's pace
 */
export function hoursSd(spans: FanSpans, edgeMs: number, byPace: readonly Span[], paceRelSd: number): number {
  const starts = startsOf(spans);
  const begun = Array.from(spans.startMs).filter((_, k) => isEdge(spans, k) && spans.state[k] === FAN_ON);
  const alike = byTheClock(begun, edgeMs) * starts;
  const edges = 2 * (starts - alike + alike ** 2) * (edgeMs / HOUR_MS) ** 2;
  const spreadHours = byPace.reduce((sum, { fromMs, toMs }) => sum + fanHoursBetween(spans, fromMs, toMs), 0);
  const clock = CLOCK_REL_SD * fanHoursBetween(spans);
  return Math.sqrt(edges + clock ** 2 + (paceRelSd * spreadHours) ** 2);
}
