import { usualInterval } from './interval.ts';

/** A step longer than this many usual intervals is a gap. */
export const GAP_INTERVALS = 3;

export interface Gap {
  /** the reading before and the one after; the bounds of the log where there is none */
  fromMs: number;
  toMs: number;
  /** readings that are lacking */
  lacking: number;
}

/**
 * Stretches without readings, also before the first and after the last when the log around goes on.
 *
 * @param timeMs    when something was read, rising, [readings]
 * @param bounds    first and last moment at which the log around (the bin's, the farm's) has readings; null: this one's own
 * @param interval  usual interval, ms; worked out from the times when left out
 */
export function gapsOf(
  timeMs: ArrayLike<number>,
  bounds: { fromMs: number; toMs: number } | null,
  interval = usualInterval(timeMs),
): Gap[] {
  if (timeMs.length === 0 || !(interval > 0)) return [];
  const gaps: Gap[] = [];
  const look = (fromMs: number, toMs: number, ends: boolean) => {
    if (toMs - fromMs <= GAP_INTERVALS * interval) return;
    const lacking = Math.round((toMs - fromMs) / interval) - (ends ? 0 : 1);
    gaps.push({ fromMs, toMs, lacking });
  };
  if (bounds !== null) look(bounds.fromMs, timeMs[0], true);
  for (let i = 1; i < timeMs.length; i++) look(timeMs[i - 1], timeMs[i], false);
  if (bounds !== null) look(timeMs[timeMs.length - 1], bounds.toMs, true);
  return gaps;
}
