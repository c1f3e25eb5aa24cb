import { usualStepMs } from './stamps.ts';

const YEAR_MS = 366 * 86_400_000;

/** A stray part of a series holds no more than this share of its rows; two seasons in one file hold more. */
const STRAY_SHARE = 0.05;

/**
 * Rows at which a logger's clock was wrong: they stand off the series' rising line and fall into time that the line covers already, or more than a
 * year away from it. So are a few rows on the line itself that stand more than a year from all the others (a clock that lost its battery counts on
 * from its first day). Rows that are merely out of order (an older export appended below) fall into time of their own and are no fault.
 *
 * @param times  instants of one series, oldest first as the file has them, ms UTC
 * @returns      positions in `times`, rising
 */
export function backwardsRows(times: readonly number[]): number[] {
  if (times.length === 0) return [];
  const rising = times.every((time, i) => i === 0 || time >= times[i - 1]);
  const kept = withoutStrays(rising ? [...times.keys()] : longestRising(times), times);
  if (kept.length === times.length) return [];
  const line = kept.map((i) => times[i]);
  const near = 3 * usualStepMs(line);
  const onLine = new Set(kept);
  const out: number[] = [];
  for (let i = 0; i < times.length; i++) {
    if (onLine.has(i)) continue;
    const time = times[i];
    const after = countBelow(line, time);
    const beyond = after === 0 ? line[0] - time : after === line.length ? time - line[line.length - 1] : 0;
    if (beyond > 0 ? beyond > YEAR_MS : !(line[after] - line[after - 1] > near)) out.push(i);
  }
  return out;
}

/** Of rising rows, those of the parts between gaps of a year that hold more than a stray share. */
function withoutStrays(kept: readonly number[], times: readonly number[]): readonly number[] {
  const parts: number[][] = [[]];
  for (const [n, i] of kept.entries()) {
    if (n > 0 && times[i] - times[kept[n - 1]] > YEAR_MS) parts.push([]);
    parts[parts.length - 1].push(i);
  }
  return parts.length === 1 ? kept : parts.filter((part) => part.length > STRAY_SHARE * kept.length).flat();
}

/** Positions of a longest run that never falls (patience sorting, O(n log n)). */
function longestRising(times: readonly number[]): number[] {
  const tails: number[] = [];
  const previous = new Int32Array(times.length).fill(-1);
  for (let i = 0; i < times.length; i++) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (times[tails[middle]] <= times[i]) low = middle + 1;
      else high = middle;
    }
    if (low > 0) previous[i] = tails[low - 1];
    tails[low] = i;
  }
  const out: number[] = [];
  for (let i = tails[tails.length - 1]; i >= 0; i = previous[i]) out.push(i);
  return out.reverse();
}

/** How many of the rising values lie below `value`. */
function countBelow(rising: readonly number[], value: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
