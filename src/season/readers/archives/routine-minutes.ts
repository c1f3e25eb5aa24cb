const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;

/** In at least this share of the hours a minute has a report, when reports are sent at that minute by routine. */
const ROUTINE_SHARE = 0.5;

/**
 * Which minutes of the hour a station reports at by routine (54, say, or every fifth); other reports are special ones.
 *
 * @param timeMs  UTC, NaN passed over
 */
export function routineMinutes(timeMs: ArrayLike<number>): (ms: number) => boolean {
  const minuteOf = (ms: number) => Math.floor((ms % HOUR_MS) / MINUTE_MS);
  const hours = new Set<number>();
  const counts = new Float64Array(60);
  for (let i = 0; i < timeMs.length; i++) {
    if (Number.isNaN(timeMs[i])) continue;
    hours.add(Math.floor(timeMs[i] / HOUR_MS));
    counts[minuteOf(timeMs[i])] += 1;
  }
  const most = Math.max(...counts);
  // A station without any routine minute (each hour at another) has no special reports either.
  const due = Math.min(ROUTINE_SHARE * hours.size, most);
  const settled = most >= ROUTINE_SHARE * hours.size;
  return (ms) => !settled || counts[minuteOf(ms)] >= due;
}
