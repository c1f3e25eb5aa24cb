/** The places that a bin can have among `of` bins, counted from 1: shared with all bins whose intervals overlap its own. */
export interface SharedRank {
  best: number;
  worst: number;
  of: number;
}

/**
 * Places by intervals. A bin's best place is 1 + the number of bins whose interval lies wholly below its own, its worst
 * the number of all less those whose interval lies wholly above. Overlap is not transitive (A with B and B with C, not A
 * with C), so a single shared number cannot say it. Bins whose intervals overlap share a place at least; of two that part,
 * the lower has the better best and the better worst.
 *
 * @param intervals  [low, high] of each; ends that touch overlap
 * @returns          in the order of `intervals`
 */
export function shareRanks(intervals: readonly (readonly [number, number])[]): SharedRank[] {
  const lows = intervals.map(([low]) => low).sort((a, b) => a - b);
  const highs = intervals.map(([, high]) => high).sort((a, b) => a - b);
  const of = intervals.length;
  return intervals.map(([low, high]) => ({
    best: 1 + countBelow(highs, low),
    worst: countAtMost(lows, high),
    of,
  }));
}

/** How many of the rising values are below a limit. */
function countBelow(rising: readonly number[], limit: number): number {
  const at = rising.findIndex((value) => value >= limit);
  return at < 0 ? rising.length : at;
}

function countAtMost(rising: readonly number[], limit: number): number {
  const at = rising.findIndex((value) => value > limit);
  return at < 0 ? rising.length : at;
}
