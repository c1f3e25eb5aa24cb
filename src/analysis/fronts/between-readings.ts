/**
 * Values at rising times from readings in time order: on the straight line between two readings, or the nearer reading
 * where the two lie too far apart.
 *
 * @param timeMs, values  [readings], rising
 * @param atMs            [times], rising
 * @param gapMs           a reading farther off than this says nothing
 * @returns               [times]; NaN where no reading is near enough
 */
export function betweenReadings(
  timeMs: Float64Array,
  values: Float64Array,
  atMs: Float64Array,
  gapMs: number,
): Float64Array {
  const out = new Float64Array(atMs.length).fill(Number.NaN);
  let next = 0;
  for (let i = 0; i < atMs.length; i++) {
    while (next < timeMs.length && timeMs[next] < atMs[i]) next += 1;
    const after = next < timeMs.length ? timeMs[next] - atMs[i] : Number.POSITIVE_INFINITY;
    const before = next > 0 ? atMs[i] - timeMs[next - 1] : Number.POSITIVE_INFINITY;
    if (before <= gapMs && after <= gapMs) {
      const part = before + after > 0 ? before / (before + after) : 0;
      out[i] = values[next - 1] + part * (values[next] - values[next - 1]);
    } else if (before <= gapMs) out[i] = values[next - 1];
    else if (after <= gapMs) out[i] = values[next];
  }
  return out;
}
