import type { LoadedSeason } from '../../season/loaded.ts';
import { integers, numbers } from '../../tables/arrow.ts';
import { FLAGS } from '../../tables/flags.ts';
import { rowsWhere } from '../../tables/sensors.ts';

const STRAY_MS = 30 * 24 * 3_600_000;
const STRAY_SHARE = 0.001;

/**
 * The last instant that the season's data reach, ms UTC: what a log that only tells changes may be carried on to.
 *
 * The latest row of the farm's own logs (cables, plenum, other fans), not after the season's stated end. Weather counts only
 * where an end is stated: an archive file often holds the whole year, most of it after the grain was gone. NaN without any.
 */
export function logsEnd({ season, tables }: Pick<LoadedSeason, 'season' | 'tables'>): number {
  const weather = season.endsMs === null ? [] : [rowsWhere(tables.weather, 'role', 'season', ['time', 'flags'])];
  const reached = [
    reachOf(numbers(tables.readings, 'time')),
    ...[tables.plenum, tables.fan].map((table) =>
      reachOf(onGoodClock(numbers(table, 'time'), integers(table, 'flags'))),
    ),
    ...weather.map(({ time, flags }) => reachOf(onGoodClock(time, flags))),
  ].filter((ms) => !Number.isNaN(ms));
  return reached.length === 0 ? Number.NaN : Math.min(Math.max(...reached), season.endsMs ?? Number.POSITIVE_INFINITY);
}

function onGoodClock(timesMs: Float64Array, flags: ArrayLike<number>): Float64Array {
  return timesMs.filter((_, i) => (flags[i] & FLAGS.clock) === 0);
}

/** The latest time, without strays: at most one row in a thousand, a month or more after all others (a logger's clock gone wrong). */
export function reachOf(timesMs: Float64Array): number {
  const sorted = timesMs.filter((ms) => !Number.isNaN(ms)).sort();
  let last = sorted.length - 1;
  for (let i = last; i > 0 && sorted.length - i <= STRAY_SHARE * sorted.length; i--) {
    if (sorted[i] - sorted[i - 1] > STRAY_MS) last = i - 1;
  }
  return last < 0 ? Number.NaN : sorted[last];
}
