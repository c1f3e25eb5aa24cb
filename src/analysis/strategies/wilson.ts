import { assertRange } from '../../base/errors.ts';
import { tQuantile } from '../../base/stats/t-quantile.ts';

/**
 * Interval of a chance of which `hits` of `tries` came true: the score interval, which keeps its share at few tries too.
 *
 * @param level  that the interval holds, 0.5 to 0.999
 * @returns      low and high end, 0 to 1
 * @source       wilson-1927; newcombe-1998, method 3
 * @valid        throws RangeError without a try
 */
export function wilsonInterval(hits: number, tries: number, level = 0.9): [low: number, high: number] {
  assertRange('tries', tries, 1, 1e9);
  assertRange('hits', hits, 0, tries);
  assertRange('level', level, 0.5, 0.999);
  const z = tQuantile((1 + level) / 2, Number.POSITIVE_INFINITY);
  const share = hits / tries;
  const middle = (share + (z * z) / (2 * tries)) / (1 + (z * z) / tries);
  const half = (z / (1 + (z * z) / tries)) * Math.sqrt((share * (1 - share)) / tries + (z * z) / (4 * tries * tries));
  // At no hit and at all hits the end is 0 or 1, which rounding must not pass.
  return [hits === 0 ? 0 : Math.max(0, middle - half), hits === tries ? 1 : Math.min(1, middle + half)];
}
