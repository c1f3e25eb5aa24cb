import { toLocalMs, type Zone } from '../../src/base/zone.ts';

/** So many at most: a column each in the table of chances. Our choice. */
const MOST = 6;

/**
 * Month ends that lie in the runs of all bins, the first `MOST`: days by which to tell the chance of being at the target where
 * none is named.
 *
 * @param spans  of each bin's run, ms UTC
 * @returns      `MM-DD`, in their order; 28 February in leap years too
 */
export function monthEndsWithin(spans: readonly { startMs: number; endMs: number }[], zone: Zone): string[] {
  if (spans.length === 0) return [];
  const from = new Date(toLocalMs(zone, Math.max(...spans.map(({ startMs }) => startMs))));
  const toMs = toLocalMs(zone, Math.min(...spans.map(({ endMs }) => endMs)));
  const days: string[] = [];
  for (let month = from.getUTCMonth() + 1; days.length < MOST; month++) {
    const last = new Date(Date.UTC(from.getUTCFullYear(), month, 0));
    // The day's own end has to lie in the run.
    if (last.getTime() + 86_400_000 > toMs) break;
    const day = last.toISOString().slice(5, 10);
    days.push(day === '02-29' ? '02-28' : day);
  }
  return days;
}
