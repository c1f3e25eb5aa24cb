import type { Problem } from '../../base/errors.ts';
import type { CsvRecords } from './csv-records.ts';
import { largestKind } from './reason-kind.ts';
import { shown } from './shown.ts';

/**
 * A file of which no row can be placed: why, by the kind of reason that most rows have.
 *
 * @param reasons  why each row cannot be placed; rows are counted from 0 below the header
 * @param textOf   a row as it stands in the file
 */
export function nothingPlaced(
  path: string,
  records: CsvRecords,
  reasons: ReadonlyMap<number, string>,
  textOf: (row: number) => string,
): Problem {
  const alike = largestKind(reasons);
  // A day above 12 tells which of the two numbers is the day, in all rows.
  const [row, reason] = alike.find(([, one]) => one.includes('time_format: dd')) ?? alike[0];
  const all = reasons.size;
  const what = all === 1 ? 'its only row' : `not one of its ${all} rows`;
  const many = all === 1 ? '' : alike.length === all ? ', all for one reason' : '';
  const most = alike.length < all ? `. Most often (${alike.length} ${alike.length === 1 ? 'row' : 'rows'}): ` : ': ';
  const can = all === 1 ? 'cannot be placed' : 'can be placed';
  const message = `${what} ${can}${many}${most}${reason}; the row is ${shown(textOf(row))}. Correct the file's entry in season.yaml (columns, time_format, time_zone, ids).`;
  return { code: 'FILE_ROWS', file: path, line: records.lines[row + 1], message };
}
