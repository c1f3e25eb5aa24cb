import { linearUnit } from '../../base/units.ts';
import type { Finding } from '../loaded.ts';
import { type AirLog, markRows } from './check-air.ts';
import { outsideLimits } from './limits.ts';
import { medianApart, medianStray } from './stuck-air.ts';
import type { Track } from './track.ts';
import { countText } from './wording.ts';

/** As said the air lies so far off the outdoor air, exchanged within so much of it, in the median. */
export const SWAPPED_APART_K = 8;
export const SWAPPED_JOIN_K = 5;
/** So many readings must be possible when exchanged, and, where no weather is at hand, so many impossible as said. */
export const SWAPPED_AIR_FIT = 0.95;
export const SWAPPED_AIR_IMPOSSIBLE = 0.25;
/** Fewer rows tell no columns apart. */
const LEAST_ROWS = 24;

/** A plenum's rows within one file. */
interface Part {
  log: AirLog;
  path: string;
  positions: number[];
}

/**
 * Files of plenums whose columns of temperature and humidity are exchanged: read the other way round their air is the outdoor air
 * with a little warmth, as said it is far from it and moves with it less closely; without weather, where as said much of it cannot be. Rows are flagged.
 *
 * @param fileOf   path of the file of a table's row
 * @param percent  whether season.yaml tells the humidity of a file in percent
 * @param outdoor  checked before; null where no weather was logged
 */
export function checkSwappedAir(
  logs: readonly AirLog[],
  fileOf: (row: number) => string,
  percent: (path: string) => boolean,
  outdoor: AirLog | null,
): Finding[] {
  const files = new Map<string, Part[]>();
  for (const log of logs) {
    for (const part of partsOf(log, fileOf)) files.set(part.path, [...(files.get(part.path) ?? []), part]);
  }
  return [...files].flatMap(([path, parts]) => {
    const swapped = parts.filter((part) => looksSwapped(part, percent(path), outdoor));
    if (2 * swapped.length <= parts.length) return [];
    const times = parts.flatMap(({ log, positions }) => positions.map((i) => log.rows.time[i]));
    for (const { log, positions } of parts) markRows(log, positions, 'unit');
    const bins = [...new Set(parts.map(({ log }) => log.binId))];
    const finding: Finding = {
      kind: 'unit',
      where: path,
      binId: bins.length === 1 ? bins[0] : null,
      fromMs: times.reduce((a, b) => Math.min(a, b)),
      toMs: times.reduce((a, b) => Math.max(a, b)),
      cells: times.length,
      text: `${path}: the columns of temperature and humidity are swapped, by all appearance: ${
        outdoor === null
          ? 'as they are said much of this air cannot be'
          : 'as they are said the plenum’s air is far from the outdoor air'
      }, and read the other way round it fits (${countText(times.length, 'row')}). None of these readings is used.`,
      advice: 'Compare season.yaml with the header of the file, exchange the two columns there, and load again.',
    };
    return [finding];
  });
}

function partsOf(log: AirLog, fileOf: (row: number) => string): Part[] {
  const byFile = new Map<string, number[]>();
  log.rows.rows.forEach((row, i) => {
    if (log.temp.use[i] === 0 || log.rh.use[i] === 0) return;
    const path = fileOf(row);
    const positions = byFile.get(path);
    if (positions === undefined) byFile.set(path, [i]);
    else positions.push(i);
  });
  return [...byFile].map(([path, positions]) => ({ log, path, positions }));
}

/** By the unit that season.yaml says, else by either. */
function looksSwapped(part: Part, percent: boolean, outdoor: AirLog | null): boolean {
  const { saidUnit } = part.log;
  return (saidUnit === null ? (['degF', 'degC'] as const) : [saidUnit]).some((unit) =>
    fitsSwapped(part, unit, percent, outdoor),
  );
}

function fitsSwapped(
  { log, positions }: Part,
  unit: 'degF' | 'degC',
  percent: boolean,
  outdoor: AirLog | null,
): boolean {
  const line = linearUnit('temperature', unit);
  if (line === null || positions.length < LEAST_ROWS) return false;
  const factor = percent ? 100 : 1;
  const said = { temp: only(log.temp, positions), rh: only(log.rh, positions) };
  const other = {
    temp: { ...said.temp, values: log.rh.values.map((rh) => factor * rh * line.scale + line.offset) },
    rh: { ...said.rh, values: log.temp.values.map((tempC) => (tempC - line.offset) / line.scale / factor) },
  };
  const impossible = ({ temp, rh }: typeof said) =>
    new Set([...outsideLimits('tempC', temp.values, temp.use), ...outsideLimits('rh', rh.values, rh.use)]).size /
    positions.length;
  if (impossible(other) > 1 - SWAPPED_AIR_FIT) return false;
  if (outdoor === null) return impossible(said) >= SWAPPED_AIR_IMPOSSIBLE;
  // A NaN, where the two logs share no time, is near to nothing. Air heated in frost is as far off, and its humidity, told in °F, as near
  // to the outdoor air; but it goes up and down with that.
  return (
    medianApart(said.temp, outdoor.temp) >= SWAPPED_APART_K &&
    medianApart(other.temp, outdoor.temp) <= SWAPPED_JOIN_K &&
    medianStray(other.temp, outdoor.temp) < medianStray(said.temp, outdoor.temp)
  );
}

function only(track: Track, positions: readonly number[]): Track {
  const use = new Uint8Array(track.use.length);
  for (const i of positions) use[i] = 1;
  return { ...track, use };
}
