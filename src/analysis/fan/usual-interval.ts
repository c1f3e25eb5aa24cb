const HOUR_MS = 3_600_000;
const NEIGHBOURS = 9;

/** The middle value, NaN of none; of an even count the lower of the two. */
export function middle(values: readonly number[] | Float64Array): number {
  if (values.length === 0) return Number.NaN;
  return Float64Array.from(values).sort()[(values.length - 1) >> 1];
}

/**
 * The usual time between samples around each interval, so that a log which changes its pace is judged by the pace of the place.
 *
 * It is the greater of two medians: of the nine intervals before and of the nine after. One long interval among
 * short ones stays long against both; the first long one of a slower stretch is usual by those after it. It is never
 * more than the log's own median or two hours, whichever is greater: the last few, ever rarer samples of a dying
 * logger do not make days usual.
 *
 * @param timeMs  [samples], ms UTC, rising
 * @returns       [samples - 1], ms
 */
export function usualIntervals(timeMs: Float64Array): Float64Array {
  const count = Math.max(0, timeMs.length - 1);
  const gaps = Float64Array.from({ length: count }, (_, i) => timeMs[i + 1] - timeMs[i]);
  const overall = middle(gaps);
  const most = Math.max(overall, 2 * HOUR_MS);
  // Median of the nine intervals that begin at i; regular stretches, nearly all, need no sorting.
  const from = new Float64Array(count);
  for (let i = 0; i < count; i++) from[i] = middleOfRun(gaps, i, Math.min(i + NEIGHBOURS, count));
  return gaps.map((_, i) => {
    const before = i >= NEIGHBOURS ? from[i - NEIGHBOURS] : Number.NaN;
    const after = i + NEIGHBOURS < count ? from[i + 1] : Number.NaN;
    const local = Number.isNaN(before) ? after : Number.isNaN(after) ? before : Math.max(before, after);
    return Math.min(Number.isNaN(local) ? overall : local, most);
  });
}

function middleOfRun(gaps: Float64Array, from: number, to: number): number {
  let same = true;
  for (let i = from + 1; i < to; i++) if (gaps[i] !== gaps[from]) same = false;
  return same ? gaps[from] : middle(gaps.subarray(from, to));
}
