import { type Estimate, withheld } from '../../base/estimate.ts';
import type { BinMoisture, FanSpans } from '../types.ts';

const DAY_MS = 24 * 3_600_000;
/** So much of the time between two moistures may lie outside a fan's log. */
const LET_PASS_DAYS = 2;

/** What of the time between the moistures at start and end the fans' log leaves out at its ends, a sentence; null where little. */
function unloggedTime(spans: FanSpans, { start, end }: Pick<BinMoisture, 'start' | 'end'>): string | null {
  if (spans.state.length === 0) return null;
  const late = start.window === null ? 0 : (spans.startMs[0] - start.window.toMs) / DAY_MS;
  const early = end.window === null ? 0 : (end.window.fromMs - spans.endMs[spans.endMs.length - 1]) / DAY_MS;
  const days = (count: number) => `${Math.round(count)} days`;
  if (early > LET_PASS_DAYS) {
    return `The fan log ends ${days(early)} before the moisture at the end was read: what ran meanwhile, and what it cost, is not known.`;
  }
  if (late > LET_PASS_DAYS) {
    return `The fan log begins ${days(late)} after the moisture at the start was read: what ran before, and what it cost, is not known.`;
  }
  return null;
}

/** Hours between the two moistures outside the fans' log; null where these are more than are let pass. */
export function unloggedHours(spans: FanSpans, { start, end }: Pick<BinMoisture, 'start' | 'end'>): number | null {
  if (spans.state.length === 0 || unloggedTime(spans, { start, end }) !== null) return null;
  const late = start.window === null ? 0 : spans.startMs[0] - start.window.toMs;
  const early = end.window === null ? 0 : end.window.fromMs - spans.endMs[spans.endMs.length - 1];
  return (Math.max(0, late) + Math.max(0, early)) / 3_600_000;
}

/**
 * What the fans used or cost between the moistures at start and end, for ratios with the points between them: withheld where
 * the log leaves out more than two days of that time.
 *
 * @param fan  of the bin; without spans nothing is held against the log
 */
export function ofLoggedTime(
  of: Estimate,
  fan: { spans?: FanSpans },
  { start, end }: Partial<Pick<BinMoisture, 'start' | 'end'>>,
): Estimate {
  if (fan.spans === undefined || start === undefined || end === undefined) return of;
  const why = unloggedTime(fan.spans, { start, end });
  return why === null ? of : withheld(why);
}
