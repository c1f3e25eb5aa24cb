import type { Problem } from '../base/errors.ts';
import { toLocalMs, zoneOf } from '../base/zone.ts';
import type { FileLoad } from './loaded.ts';
import type { Season } from './season.ts';

const LOGS = ['grain', 'fan', 'plenum'];

/** The problem that the season's bounds leave nothing of its logs to review; null where something is left or no log was outside. */
export function allOutside(season: Season, files: readonly FileLoad[]): Problem | null {
  const logs = files.filter((file) => LOGS.includes(file.holds));
  const sum = (key: 'kept' | 'outside') => logs.reduce((all, file) => all + file[key], 0);
  if (sum('kept') > 0 || sum('outside') === 0) return null;
  const zone = zoneOf(season.site.timeZone);
  const day = (ms: number) => new Date(toLocalMs(zone, ms)).toISOString().slice(0, 10);
  const bounds = [
    season.startsMs === null ? '' : `from ${day(season.startsMs)}`,
    // `endsMs` is the first minute after the last day.
    season.endsMs === null ? '' : `to ${day(season.endsMs - 12 * 3_600_000)}`,
  ].filter((part) => part !== '');
  const message = `starts and ends let in readings ${bounds.join(' ')} only, and all ${sum('outside')} values of ${logs
    .map((file) => file.path)
    .join(', ')} lie outside. Set them to the days of this season's logs, or leave them out.`;
  return { code: 'SEASON_BOUNDS', file: 'season.yaml', message };
}
