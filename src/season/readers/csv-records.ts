import { CsvError, parse } from 'csv-parse/sync';

/** The records of a CSV file, empty lines left out. */
export interface CsvRecords {
  /** fields as they stand, [records][fields] */
  fields: string[][];
  /** the line on which each record begins, from 1, [records] */
  lines: Int32Array;
}

/** A quote that is opened and never closed. */
export interface CsvFault {
  line: number;
  reason: string;
}

const BREAKS = /\r\n|\n|\r/g;

/**
 * Cut a text into records (RFC 4180, any delimiter, any line ends, also mixed). Line numbers count breaks inside quotes.
 *
 * @param limit  stop after that many records
 */
export function csvRecords(text: string, delimiter: string, limit?: number): CsvRecords | CsvFault {
  const options = {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
    ...(limit === undefined ? {} : { to: limit }),
  };
  let all: string[][];
  try {
    all = parse(text, options);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { line: firstBrokenLine(text, options), reason: 'a quote is opened that never closes' };
  }
  const quoted = text.includes('"');
  const fields: string[][] = [];
  const lines: number[] = [];
  let line = 1;
  for (const record of all) {
    if (record.length > 1 || record[0].trim() !== '') {
      fields.push(record);
      lines.push(line);
    }
    line += 1;
    if (quoted) for (const field of record) line += field.match(BREAKS)?.length ?? 0;
  }
  return { fields, lines: Int32Array.from(lines) };
}

/** Where the record begins that has no end: behind the last whole one. */
function firstBrokenLine(text: string, options: object): number {
  let line = 1;
  const on_record = (record: string[]) => {
    line += 1 + record.reduce((breaks, field) => breaks + (field.match(BREAKS)?.length ?? 0), 0);
    return null;
  };
  try {
    parse(text, { ...options, on_record });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
  }
  return line;
}

/** The lines of a text as they stand, to show a rejected row. */
export function textLines(text: string): string[] {
  return text.split(BREAKS);
}
