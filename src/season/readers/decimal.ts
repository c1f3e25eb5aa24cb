export type Decimal = '.' | ',';

/** A comma that cannot group thousands; a point that cannot; both together with the last one deciding. */
const COMMA_DECIMAL = /^[^\d]*(?:\d+,(?:\d{1,2}|\d{4,})(?!\d)|0\d*,\d+|\d{4,},\d+|\d{1,3}(?:\.\d{3})+,\d+)(?![\d,.])/;
const POINT_DECIMAL =
  /^[^\d]*(?:\d*\.(?:\d{1,2}|\d{4,})(?!\d)|0\d*\.\d+|\d{4,}\.\d+|\d{1,3}(?:,\d{3})+\.\d+)(?![\d,.])/;
const EITHER = /^[^\d]*\d{1,3}[,.]\d{3}(?!\d)/;

/**
 * The decimal sign of a file, by the cells that leave no doubt; where none does, by the delimiter (a comma that parts the fields
 * is no decimal sign, a semicolon is there because the comma is one).
 *
 * @param cells  number cells in file order; looked at until 500 have told
 * @returns      null: cells such as `1,234` stand in the file and nothing tells what they mean
 */
export function findDecimal(cells: Iterable<string>, delimiter: string): Decimal | null {
  let comma = 0;
  let point = 0;
  let doubtful = false;
  for (const cell of cells) {
    if (COMMA_DECIMAL.test(cell)) comma += 1;
    else if (POINT_DECIMAL.test(cell)) point += 1;
    else if (EITHER.test(cell) && cell.includes(',')) doubtful = true;
    if (comma + point >= 500) break;
  }
  if (comma !== point) return comma > point ? ',' : '.';
  if (comma > 0 || delimiter === ',' || !doubtful) return delimiter === ';' && comma > 0 ? ',' : '.';
  return delimiter === ';' ? ',' : null;
}
