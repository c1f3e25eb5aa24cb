import { csvRecords } from '../csv-records.ts';

/** A block of lines: the place, or a header and the rows below it. */
export interface OpenMeteoBlock {
  /** lines of the records in the file, from 0, [records] */
  lines: number[];
  /** [records][fields] */
  fields: string[][];
}

/** Empty, or separators alone, as a spreadsheet writes an empty line. */
const EMPTY = /^[\s,]*$/;
/** A row begins with its time, a header with a name. */
const ROW = /^\s*"?(?:\d{4}-\d{2}-\d{2}|-?\d{9,10}\s*,)/;

/** Cut a file into its blocks, which empty lines part. An empty line among the rows of a block does not end it. */
export function blocksOf(lines: readonly string[]): OpenMeteoBlock[] {
  const blocks: number[][] = [];
  let open = false;
  lines.forEach((line, i) => {
    if (EMPTY.test(line)) open = false;
    else if (open || (blocks.length > 0 && ROW.test(line))) blocks[blocks.length - 1].push(i);
    else blocks.push([i]);
    open ||= !EMPTY.test(line);
  });
  return blocks.map((at) => ({ lines: at, fields: at.map((line) => fieldsOf(lines[line])) }));
}

function fieldsOf(line: string): string[] {
  if (!line.includes('"')) return line.split(',');
  const records = csvRecords(line, ',');
  return 'fields' in records ? (records.fields[0] ?? ['']) : line.split(',');
}
