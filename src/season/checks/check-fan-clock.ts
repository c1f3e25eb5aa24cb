import type { Table } from 'apache-arrow';
import { zoneOf } from '../../base/zone.ts';
import { textColumn } from '../../tables/arrow.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import { binOf, type FanSeen } from './check-fans.ts';
import { WORKING_PRESSURE_PA } from './dead-current.ts';
import { clockShift } from './fan-clock.ts';
import { airNow, fanHistory } from './fan-state.ts';
import type { Rows } from './rows.ts';
import { HOUR_MS } from './track.ts';
import { countText } from './wording.ts';

/**
 * Fan logs whose clock does not fit the plenum's pressure: all of a bin's fans shifted by whole hours agree with it clearly
 * better. Nothing is shifted here, for which of the two clocks is wrong only the owner can say.
 *
 * @param table        table `fan`, for the files that its rows stem from
 * @param plenumTable  table `plenum`, likewise
 */
export function checkFanClock(
  season: Season,
  fans: readonly FanSeen[],
  plenums: readonly Rows[],
  table: Table,
  plenumTable: Table,
): Finding[] {
  return season.bins.flatMap((bin) => {
    const own = fans.filter((fan) => bin.fanIds.includes(fan.id) && binOf(season, fan.id) === bin.id);
    const plenum = plenums.find((one) => one.id === bin.id);
    // A fan without a log, or one that also blows into another bin, could have made or not made the pressure.
    if (plenum === undefined || own.length === 0 || own.length !== bin.fanIds.length) return [];
    const pressure = plenum.column('static_pressure_pa');
    const at = [...plenum.time.keys()].filter((i) => Number.isFinite(pressure[i]) && plenum.flags[i] === 0);
    const time = Float64Array.from(at, (i) => plenum.time[i]);
    const high = Uint8Array.from(at, (i) => (Math.abs(pressure[i]) >= WORKING_PRESSURE_PA ? 1 : 0));
    // A sensor that never shows a fan at work, or always does, tells nothing of the clock.
    if (!high.includes(1) || !high.includes(0)) return [];
    const histories = own.map((fan) => fanHistory(fan.log.time, fan.state));
    const found = clockShift(time, high, (times) => airNow(times, histories));
    if (found === null) return [];
    const { hours, readings, misfits, misfitsShifted } = found;
    const paths = pathsOf(
      table,
      own.flatMap((fan) => [...fan.rows.rows]),
    );
    const plenumPaths = pathsOf(plenumTable, [...plenum.rows]);
    const count = Math.abs(hours);
    const finding: Finding = {
      kind: 'clock',
      where: own.map((fan) => `fan ${fan.id}`).join(', '),
      binId: bin.id,
      fromMs: time[0],
      toMs: time[time.length - 1],
      cells: 0,
      text: `The log of ${own.map((fan) => `fan ${fan.id}`).join(' and ')} does not fit the pressure in the plenum of ${bin.id}: ${misfits} of ${countText(readings, 'reading')} contradict it, and ${misfitsShifted} would if the fan ran ${countText(count, 'hour')} ${hours > 0 ? 'later' : 'earlier'} than logged. Nothing is shifted; what the fan hours cost by time of day and which air they brought in are in doubt.`,
      advice: adviceOf(season, paths, plenumPaths, time[0], hours),
    };
    return [finding];
  });
}

function pathsOf(table: Table, rows: readonly number[]): string[] {
  const { codes, values } = textColumn(table, 'file');
  return [...new Set(rows.map((row) => codes[row]))].map((code) => values[code]);
}

/** What to write so that the stamps fit: at the fan's files where the plenum's clock is right, else at the plenum's. */
function adviceOf(
  season: Season,
  fan: readonly string[],
  plenum: readonly string[],
  atMs: number,
  hours: number,
): string {
  const site = season.site.timeZone;
  const readAs = (path: string) => season.files.find((file) => file.paths.includes(path))?.timeZone ?? site;
  const at = (paths: readonly string[]) => paths.join(' and ');
  const rest = 'a stamp that carries its own offset is corrected in a copy of the log.';
  // A logger on standard time that is read as daylight time is stamped an hour too early.
  const early = hours > 0 ? fan : plenum;
  if (Math.abs(hours) === 1 && readAs(early[0]) === site)
    return `An hour is what daylight saving makes: if that logger keeps standard time, write \`time_zone: local standard\` at ${at(early)} in season.yaml; ${rest}`;
  const zoneFor = (path: string, later: number) => {
    const read = readAs(path);
    const zone = read === 'local standard' ? zoneOf(site, true) : zoneOf(read);
    const offset = Math.round(zone.offsetMs(atMs) / HOUR_MS) - later;
    return offset === 0 || Math.abs(offset) > 12 ? 'UTC' : `Etc/GMT${offset < 0 ? '+' : '-'}${Math.abs(offset)}`;
  };
  return `See which clock is right. If the plenum’s, write \`time_zone: ${zoneFor(fan[0], hours)}\` at ${at(fan)} in season.yaml; if the fan’s, \`time_zone: ${zoneFor(plenum[0], -hours)}\` at ${at(plenum)}; where that zone has daylight saving, the name of its place. ${rest[0].toUpperCase()}${rest.slice(1)}`;
}
