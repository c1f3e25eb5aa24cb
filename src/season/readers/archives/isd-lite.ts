import type { Problem } from '../../../base/errors.ts';
import { localMidnight } from '../../clock/iso-stamp.ts';
import { textLines } from '../csv-records.ts';
import type { FileReading } from '../file-reading.ts';
import { shown } from '../shown.ts';
import { formatProblem } from './archive-csv.ts';
import { type ArchiveCell, addArchiveRow } from './archive-row.ts';
import { SeaLevel } from './sea-level.ts';

const MISSING = '-9999';
/** Fixed positions, from 0, end exclusive, and places in the row (NOAA, ISD-Lite format document): tenths of degC, degC and hPa. */
const FIELDS = [
  { column: 'temp_c', header: 'air temperature', from: 13, to: 19, place: 4 },
  { column: 'dew_point_c', header: 'dew point', from: 19, to: 25, place: 5 },
  { column: 'pressure_pa', header: 'sea-level pressure', from: 25, to: 31, place: 6 },
] as const;
/** Fields of a whole line: with all of them there blanks part them too, in a copy whose blanks were squeezed. */
const ALL = 12;
const STAMP = /^(\d{4}) (\d{2}) (\d{2}) (\d{2})(?=[ -]|$)/;

/**
 * NOAA ISD-Lite: one line an hour, UTC, fixed width, -9999 missing. Pressure is that at sea level: it becomes station pressure with the
 * site's elevation, and stays missing without it.
 *
 * @source NOAA National Centers for Environmental Information, ISD-Lite format document
 */
export function readIsdLite(reading: FileReading): Problem[] {
  const { tally, path } = reading;
  const seaLevel = new SeaLevel(reading.season.site.elevationM);
  const lines = textLines(reading.text);
  let placed = 0;
  lines.forEach((text, i) => {
    if (text.trim() === '') return;
    tally.rows += 1;
    const timeMs = hourOf(text);
    if (typeof timeMs === 'string') {
      tally.rejectRow(i + 1, FIELDS.length, text, timeMs);
      return;
    }
    placed += 1;
    addArchiveRow(reading, i + 1, timeMs, FIELDS.length, () => cellsOf(text, seaLevel));
  });
  if (placed === 0) {
    const what = `has no line of the form of ISD-Lite (year month day hour, then numbers at fixed places); its first line is ${shown(lines[0])}`;
    return [formatProblem(path, 1, what)];
  }
  seaLevel.tell(reading);
  return [];
}

function hourOf(text: string): number | string {
  if (text.length < 31) return 'is shorter than an ISD-Lite line';
  const match = STAMP.exec(text);
  if (match === null) return 'does not begin with year, month, day and hour';
  const [year, month, day, hour] = match.slice(1).map(Number);
  const midnight = localMidnight(year, month, day);
  const exists = midnight !== null && hour < 24 && year >= 1900 && year < 2200;
  return exists ? midnight + hour * 3_600_000 : 'names a day or hour that does not exist';
}

function cellsOf(line: string, seaLevel: SeaLevel): ArchiveCell[] {
  const parts = line.trim().split(/\s+/);
  let tempC = Number.NaN;
  return FIELDS.map(({ column, header, from, to, place }) => {
    const text = parts.length === ALL ? parts[place] : line.slice(from, to).trim();
    const cell = (value: ArchiveCell['value']) => ({ column, header, text, value });
    if (text === MISSING || text === '') return cell(null);
    if (!/^-?\d+$/.test(text)) return cell('is no whole number');
    const value = Number(text) / 10;
    if (column === 'temp_c') tempC = value;
    return cell(column === 'pressure_pa' ? seaLevel.toStation(value * 100, tempC) : value);
  });
}
