import type { Problem } from '../../../base/errors.ts';
import { csvRecords, textLines } from '../csv-records.ts';
import { cutOff } from '../cut-off.ts';
import { shown, shownList } from '../shown.ts';

/** A table inside an archive's CSV file. */
export interface ArchiveCsv {
  headers: string[];
  /** rows below the header, [rows][fields] */
  rows: string[][];
  /** lines of the rows in the file, from 1, [rows] */
  lines: number[];
  /** the row as it stands, to show a reject */
  textOf(row: number): string;
  /** why the last row is cut off, null for a whole one */
  cutOff: string | null;
}

/**
 * Cut a CSV text into header and rows. Lines that open with `#` are the archive's notes and passed over.
 *
 * @param name  of the format, for the problem
 */
export function archiveCsv(path: string, text: string, name: string): ArchiveCsv | Problem {
  const lines = textLines(text);
  const notes = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  if (notes < 0) return formatProblem(path, 1, `holds notes only, and no table of ${name}`);
  const body = notes === 0 ? text : lines.slice(notes).join('\n');
  const first = lines[notes];
  const records = csvRecords(body, first.includes('\t') && !first.includes(',') ? '\t' : ',');
  if (!('fields' in records)) {
    const line = records.line + notes;
    const message = `has a quote that is opened and never closes. Look at the quotes from line ${line} on, or download it again.`;
    return { code: 'FILE_FORMAT', file: path, line, message };
  }
  const [headers = [], ...below] = records.fields;
  // Files laid one below the other bring their headers along.
  const isHeader = (fields: readonly string[]) => fields.every((field, i) => field === headers[i]);
  const starts = Array.from(records.lines.slice(1), (line) => line + notes);
  const kept = [...below.keys()].filter((row) => !isHeader(below[row]));
  const rows = kept.map((row) => below[row]);
  const at = kept.map((row) => starts[row]);
  const ends = kept.map((row) => (starts[row + 1] ?? lines.length + 1) - 1);
  return {
    headers: headers.map((header) => header.trim()),
    rows,
    lines: at,
    cutOff: rows.length === 0 ? null : cutOff(text, rows[rows.length - 1].length, headers.length),
    textOf: (row) =>
      lines
        .slice(at[row] - 1, ends[row])
        .join('\n')
        .trimEnd(),
  };
}

export function formatProblem(path: string, line: number, what: string): Problem {
  return { code: 'FILE_FORMAT', file: path, line, message: `${what}. Correct format in season.yaml.` };
}

/** The problem that a column is lacking which the format has; `way` says what to do. */
export function lacksColumn(
  path: string,
  line: number,
  what: string,
  headers: readonly string[],
  way: string,
): Problem {
  const message = `has no ${what}; its headers are ${shownList(headers.filter((header) => header !== ''))}. ${way}`;
  return { code: 'FILE_COLUMNS', file: path, line, message };
}

/** Why a weather file without humidity is not taken. */
export const NO_HUMIDITY =
  'Without humidity nothing can be said of drying; export it again with relative humidity or dew point.';

/**
 * The problem that a file of one place holds several: their hours would be mixed. A row cut off at or before the field behind
 * the name (as by a download that broke off) says nothing: its name may be half of one. It is rejected as a row later.
 *
 * @param index  column of the station's name, -1 for none
 */
export function severalStations(path: string, rows: readonly string[][], index: number): Problem | null {
  const whole = index < 0 ? [] : rows.filter((row) => row.length > index + 1);
  const names = new Set(whole.map((row) => row[index].trim()).filter((name) => name !== ''));
  if (names.size < 2) return null;
  const message = `holds ${names.size} stations (${shownList([...names])}), and the farm has one weather. Export the nearest alone, or split the file.`;
  return { code: 'FILE_FORMAT', file: path, line: 1, message };
}

/** The problem that not one row has a time. */
export function noRowPlaced(path: string, line: number, rows: number, reason: string, text: string): Problem {
  const message = `not one of its ${rows} rows can be placed; the first ${reason}: ${shown(text)}. Correct format in season.yaml.`;
  return { code: 'FILE_ROWS', file: path, line, message };
}
