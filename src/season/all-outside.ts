import type { Problem } from '../base/errors.ts';
import { toLocalMs, zoneOf } from '../base/zone.ts';
import { countText } from './checks/wording.ts';
import type { FileLoad, Finding } from './loaded.ts';
import type { Season } from './season.ts';

const LOGS = ['grain', 'fan', 'plenum'];

/** The problem that the season's bounds leave nothing of its logs to review; null where something is left or no log was outside. */
export function allOutside(season: Season, files: readonly FileLoad[]): Problem | null {
  const logs = files.filter((file) => LOGS.includes(file.holds));
  const sum = (key: 'kept' | 'outside') => logs.reduce((all, file) => all + file[key], 0);
  if (sum('kept') > 0 || sum('outside') === 0) return null;
  const message = `starts and ends let in readings ${boundsText(season)} only, and all ${sum('outside')} values of ${logs
    .map((file) => file.path)
    .join(', ')} lie outside. Set them to the days of this season's logs, or leave them out.`;
  return { code: 'SEASON_BOUNDS', file: 'season.yaml', ...season.boundsAt, message };
}

/** Tell of each file of the season that its bounds leave nothing of, where they leave something of others. */
export function outsideFindings(season: Season, files: readonly FileLoad[]): Finding[] {
  return files
    .filter(({ role, kept, outside }) => role === 'season' && kept === 0 && outside > 0)
    .map(({ path, outside }) => ({
      kind: 'silent',
      where: path,
      binId: null,
      fromMs: null,
      toMs: null,
      cells: 0,
      text: `${path}: starts and ends let in readings ${boundsText(season)} only, and all ${countText(outside, 'value')} of this file lie outside.`,
      advice: 'Check the years in the file, and set starts and ends in season.yaml to the days of this season’s logs.',
    }));
}

/** `from 2024-09-20 to 2025-04-30`, local days. */
function boundsText({ site, startsMs, endsMs }: Season): string {
  const zone = zoneOf(site.timeZone);
  const day = (ms: number) => new Date(toLocalMs(zone, ms)).toISOString().slice(0, 10);
  // `endsMs` is the first minute after the last day.
  const bounds = [
    startsMs === null ? '' : `from ${day(startsMs)}`,
    endsMs === null ? '' : `to ${day(endsMs - 12 * 3_600_000)}`,
  ];
  return bounds.filter((part) => part !== '').join(' ');
}
