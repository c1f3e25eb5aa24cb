import { startOfLocalDay, type Zone } from '../../base/zone.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { FanSpans } from '../types.ts';
import { DAY_MS } from './outdoor-days.ts';

/** Unknown time of a day beyond which nobody knows whether the fan rested, h. */
const MOST_UNKNOWN_H = 1;

/**
 * Hours with a fan on by local day; NaN where the log does not tell the day, before the bin was full, and on the days on which grain was drawn and
 * the days after: what comes past a sensor then may be warmer than what lay there.
 *
 * @param dayMs   local midnights as if UTC, [days]
 * @param fullMs  ms UTC; null: not known, nothing is left out
 * @param drawnMs  ms UTC, in any order
 * @returns       h, [days]
 */
export function fanHoursByDay(
  spans: FanSpans | null,
  dayMs: Float64Array,
  fullMs: number | null,
  drawnMs: readonly number[],
  zone: Zone,
): Float64Array {
  return dayMs.map((ms) => {
    const fromMs = startOfLocalDay(zone, ms);
    const toMs = startOfLocalDay(zone, ms + DAY_MS);
    if (spans === null || spans.startMs.length === 0 || (fullMs !== null && fromMs < fullMs)) return Number.NaN;
    // What is drawn in the evening goes on past midnight, and the grain settles.
    if (drawnMs.some((at) => at >= fromMs - DAY_MS && at < toMs)) return Number.NaN;
    const told = fromMs >= spans.startMs[0] && toMs <= spans.endMs[spans.endMs.length - 1];
    if (!told || unknownHoursBetween(spans, fromMs, toMs) > MOST_UNKNOWN_H) return Number.NaN;
    return fanHoursBetween(spans, fromMs, toMs);
  });
}
