import type { Problem } from '../../base/errors.ts';
import { type FileClock, fileClock } from '../clock/file-clock.ts';
import { KEYS, keysOf } from '../column-keys.ts';
import { addRows } from './add-rows.ts';
import { type ColumnPlan, columnPlan } from './column-plan.ts';
import { type CsvRecords, csvRecords, textLines } from './csv-records.ts';
import { dayAndMonth } from './day-and-month.ts';
import { findDecimal } from './decimal.ts';
import { type FileReading, isOutside } from './file-reading.ts';
import { findDelimiter, namedDelimiter } from './find-delimiter.ts';
import { keyName } from './match-header.ts';
import { nothingPlaced } from './nothing-placed.ts';
import { placeRows } from './place-rows.ts';

/**
 * Read a CSV file into the tables.
 *
 * @returns every problem that keeps the file as a whole from being read; rows and cells that fail are in the tally
 */
export function readCsv(reading: FileReading): Problem[] {
  const { spec, path, text, season } = reading;
  const keys = KEYS[spec.holds];
  const wanted = wantedHeader(reading);
  // Spreadsheets put such a line first to tell each other the delimiter.
  const said = /^sep=([^\r\n])[ \t]*(?:\r\n|\n|\r)/i.exec(text)?.[1] ?? null;
  const delimiter = spec.delimiter === null ? (said ?? findDelimiter(text, wanted)) : namedDelimiter(spec.delimiter);
  const records = csvRecords(text, delimiter);
  if (!('fields' in records)) {
    const message = `${records.reason}. Look at the quotes from line ${records.line} on.`;
    return [{ code: 'FILE_FORMAT', file: path, line: records.line, message }];
  }
  dropTitleLines(records, wanted);
  const headers = records.fields[0].map((header) => header.trim());
  if (records.fields.length < 2) {
    const message = `has a header and not one row below it. Export the log again, or take the file out of season.yaml.`;
    return [{ code: 'FILE_EMPTY', file: path, line: 1, message }];
  }
  const plan = columnPlan(season, spec, path, headers);
  if (Array.isArray(plan)) return plan.map((problem) => ({ ...problem, line: records.lines[0] }));
  const decimal = spec.decimal ?? findDecimal(numberCells(records, plan), delimiter);
  for (const column of plan.measured) if (column.number !== null) column.number.decimal = decimal;

  const lines = textLines(text);
  const placed = placeRows(reading, records, plan);
  reading.tally.rows = records.fields.length - 1;
  const turned = placed.reasons.size === 0 ? null : dayAndMonth(path, spec.timeFormat, !keys.dateEnough, records, plan);
  if (turned !== null) return [turned];
  const rejectedRows = placed.reasons.size;
  if (rejectedRows === reading.tally.rows)
    return [nothingPlaced(path, records, placed.reasons, (row) => rowText(records, lines, row + 1))];
  for (const [row, reason] of placed.reasons) {
    const line = records.lines[row + 1];
    reading.tally.rejectRow(line, plan.measured.length, rowText(records, lines, row + 1), reason);
  }
  const inSeason = (timeMs: number) => !isOutside(reading, timeMs);
  const clock: FileClock = fileClock(path, placed.stamps, spec.timeZone, season.site.timeZone, keys.ordered, inSeason);
  addRows(reading, records, plan, placed, clock, (record) => rowText(records, lines, record));
  return [];
}

/** Lines above the header (a title, the logger's name): the header is the first of the first 30 lines that has the most wanted names. */
function dropTitleLines(records: CsvRecords, wanted: (header: string) => boolean): void {
  const known = records.fields.slice(0, 30).map((fields) => fields.filter((field) => wanted(field.trim())).length);
  const header = known.indexOf(Math.max(...known));
  // One name may stand in a row by chance.
  if (header <= 0 || known[header] < 2) return;
  records.fields.splice(0, header);
  records.lines = records.lines.slice(header);
}

/** Whether a header is one that the file's declaration looks for. */
function wantedHeader({ spec }: FileReading): (header: string) => boolean {
  const names =
    spec.columns === null
      ? keysOf(spec.holds)
      : Object.values(spec.columns)
          .flatMap(({ header, clock }) => (clock === undefined ? [header] : [header, clock]))
          .map((header) => header.trim().toLowerCase());
  const known = new Set(names);
  const patterns = names.filter((name) => name.includes('{')).map((name) => name.slice(0, name.indexOf('{')));
  return (header) => {
    const name = header.toLowerCase();
    return (
      known.has(spec.columns === null ? keyName(name) : name) ||
      patterns.some((start) => start !== '' && name.startsWith(start))
    );
  };
}

function* numberCells(records: CsvRecords, plan: ColumnPlan): Generator<string> {
  const columns = plan.measured.filter((column) => column.number !== null).map((column) => column.index);
  for (let i = 1; i < records.fields.length; i++) {
    for (const index of columns) yield records.fields[i][index] ?? '';
  }
}

function rowText(records: CsvRecords, lines: readonly string[], record: number): string {
  const from = records.lines[record] - 1;
  const to = record + 1 < records.fields.length ? records.lines[record + 1] - 1 : lines.length;
  return lines.slice(from, to).join('\n').trimEnd();
}
