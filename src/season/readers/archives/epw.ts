import type { Problem } from '../../../base/errors.ts';
import { localMidnight } from '../../clock/iso-stamp.ts';
import { textLines } from '../csv-records.ts';
import { cutOff } from '../cut-off.ts';
import type { FileReading } from '../file-reading.ts';
import { shown } from '../shown.ts';
import { formatProblem, noRowPlaced } from './archive-csv.ts';
import { type ArchiveCell, addArchiveRow } from './archive-row.ts';
import { plainNumber } from './plain-number.ts';
import { isTypicalYear, standInYears } from './typical-year.ts';

const HOUR_MS = 3_600_000;

/** Columns from 0 and the number from which on it says missing: other nines are in use too (EnergyPlus Auxiliary Programs, EPW data dictionary; from memory). */
const FIELDS = [
  { column: 'temp_c', header: 'dry bulb', index: 6, missing: 99.9, scale: 1 },
  { column: 'dew_point_c', header: 'dew point', index: 7, missing: 99.9, scale: 1 },
  { column: 'rh', header: 'relative humidity', index: 8, missing: 999, scale: 0.01 },
  { column: 'pressure_pa', header: 'station pressure', index: 9, missing: 999_999, scale: 1 },
] as const;
const LEAST_FIELDS = 10;

interface EpwRow {
  line: number;
  text: string;
  fields: string[];
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
}

/**
 * EPW: eight header lines, then an hour a line in local standard time. Hours count from 1 to 24 and name the end of the hour, so that
 * hour 1 starts at midnight. Pressure is the station's, humidity over water. Months of a typical year come from different years; they
 * are put on one (`standInYears`).
 *
 * @source EnergyPlus Auxiliary Programs, EPW data dictionary (from memory)
 */
export function readEpw(reading: FileReading): Problem[] {
  const { path, tally, findings, spec } = reading;
  const lines = textLines(reading.text);
  const offsetMs = zoneOffsetMs(lines[0]);
  if (offsetMs === null) {
    const what = `has no LOCATION line with the time zone as its ninth field, with which an EPW file begins; its first line is ${shown(lines[0])}`;
    return [formatProblem(path, 1, what)];
  }
  const periods = lines.findIndex((line) => /^data periods,/i.test(line));
  if (periods < 0) return [formatProblem(path, 1, 'has no DATA PERIODS line, which an EPW file has above its hours')];
  const perHour = Number(lines[periods].split(',')[2]) || 1;

  const rows: EpwRow[] = [];
  let first: { line: number; reason: string } | null = null;
  lines.forEach((text, i) => {
    if (i <= periods || text.trim() === '') return;
    tally.rows += 1;
    const before = rows[rows.length - 1]?.fields.length ?? 0;
    const cut = i === lines.length - 1 ? cutOff(reading.text, text.split(',').length, before) : null;
    const row = cut ?? rowOf(text, i + 1);
    if (typeof row === 'string') {
      tally.rejectRow(i + 1, FIELDS.length, text, row);
      first ??= { line: i + 1, reason: row };
    } else rows.push(row);
  });
  if (tally.rows === 0) {
    const message =
      'has its header lines and not one hour below them. Download it again, or take the file out of season.yaml.';
    return [{ code: 'FILE_EMPTY', file: path, line: periods + 1, message }];
  }
  const fromZero = countsFromZero(lines.slice(periods + 1));
  if (fromZero >= 0) {
    const message =
      'counts its hours from 0 to 23, where an EPW file has 1 to 24, each the end of its hour; nothing says which is meant. Download it again, or read it as plain CSV with columns.';
    return [{ code: 'FILE_FORMAT', file: path, line: periods + 2 + fromZero, message }];
  }
  const typical = isTypicalYear(rows);
  const years = typical ? standInYears(rows) : rows.map((row) => row.year);
  const stepMs = HOUR_MS / perHour;
  // Of several records an hour the last ends it (60), or is its last quarter's start (45).
  const minutesEnd = perHour === 1 || rows.some((row) => row.minute === 60);
  let placed = 0;
  rows.forEach((row, i) => {
    const day = localMidnight(years[i], row.month, row.day);
    if (day === null) {
      tally.rejectRow(row.line, FIELDS.length, row.text, 'names a day that does not exist');
      first ??= { line: row.line, reason: 'names a day that does not exist' };
      return;
    }
    placed += 1;
    const inHour = perHour === 1 ? 0 : row.minute * 60_000 - (minutesEnd ? stepMs : 0);
    const timeMs = day + (row.hour - 1) * HOUR_MS + inHour - offsetMs;
    addArchiveRow(reading, row.line, timeMs, FIELDS.length, () => cellsOf(row));
  });
  if (placed === 0) {
    const { line, reason } = first ?? { line: 1, reason: 'is no row' };
    return [noRowPlaced(path, line, tally.rows, reason, lines[line - 1])];
  }
  tally.typicalYear = typical;
  if (typical) findings.push(typicalFinding(path, rows, years, spec.role, tally.firstMs, tally.lastMs));
  return [];
}

/** Local standard time minus UTC, from the ninth field of the LOCATION line; null where it is none. */
function zoneOffsetMs(line: string): number | null {
  const fields = line.split(',').map((field) => field.trim());
  if (!/^location$/i.test(fields[0]) || fields[8] === '') return null;
  const hours = Number(fields[8]);
  return hours >= -12 && hours <= 14 ? hours * HOUR_MS : null;
}

/** The first row of an hour 0 in a file without an hour 24 and with such a row on more than one day; -1 for none. */
function countsFromZero(lines: readonly string[]): number {
  const hours = lines.map((line) => line.split(',', 4)[3]?.trim() ?? '');
  const zeros = hours.filter((hour) => hour === '0' || hour === '00').length;
  return zeros < 2 || hours.includes('24') ? -1 : hours.findIndex((hour) => hour === '0' || hour === '00');
}

function rowOf(text: string, line: number): EpwRow | string {
  const fields = text.split(',').map((field) => field.trim());
  if (fields.length < LEAST_FIELDS) return `has ${fields.length} fields, too few for an EPW line`;
  const [year, month, day, hour, minute] = fields.slice(0, 5).map(Number);
  if (!(Number.isInteger(hour) && hour >= 1 && hour <= 24)) return 'has an hour outside 1 to 24';
  if (!(year >= 1800 && year < 2200)) return 'has no year';
  // Whether 29 February is there hangs on the year, which a typical year settles as a whole.
  if (localMidnight(2000, month, day) === null) return 'names a day that does not exist';
  return { line, text, fields, year, month, day, hour, minute: minute >= 0 && minute <= 60 ? minute : 0 };
}

function cellsOf({ fields }: EpwRow): ArchiveCell[] {
  return FIELDS.map(({ column, header, index, missing, scale }) => {
    const text = fields[index];
    const number = plainNumber(text);
    const value = text === '' || number >= missing ? null : Number.isNaN(number) ? 'is no number' : number * scale;
    return { column, header, text, value };
  });
}

function typicalFinding(
  path: string,
  rows: readonly EpwRow[],
  years: readonly number[],
  role: 'season' | 'history',
  fromMs: number | null,
  toMs: number | null,
) {
  const from = [...new Set(rows.map((row) => row.year))].sort((a, b) => a - b);
  return {
    kind: 'clock' as const,
    where: path,
    binId: null,
    fromMs,
    toMs,
    cells: 0,
    text: `${path} is a typical year: its months come from ${from.length} years between ${from[0]} and ${from[from.length - 1]}. They are put on ${years[0]}, so that hour follows hour; that is the weather of no real year.`,
    advice: role === 'season' ? 'Set role: history for this file; the season needs the weather of its own year.' : null,
  };
}
