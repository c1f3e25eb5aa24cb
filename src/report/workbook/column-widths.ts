import { SSF } from '@e965/xlsx';
import { HEADER_ROWS, type Sheet, type SheetCell } from './sheet.ts';

/** Characters of a cell as it is shown; of several lines the longest. */
function lengthOf(cell: SheetCell | null | undefined): number {
  if (cell === null || cell === undefined) return 0;
  const shown = typeof cell.value === 'string' ? cell.value : String(SSF.format(cell.format ?? 'General', cell.value));
  return Math.max(...shown.split(/\r?\n/).map((line) => [...line].length));
}

/** A header is broken between words. */
function longestWord(cell: SheetCell | null | undefined): number {
  return Math.max(
    ...String(cell?.value ?? '')
      .split(' ')
      .map((word) => [...word].length),
  );
}

/** Width of each column in characters: what its cells need, up to the sheet's widest, and no header's word broken. */
export function columnWidths(sheet: Sheet): number[] {
  const [names, ...others] = sheet.rows;
  return names.map((name, at) => {
    const body = Math.max(0, ...others.slice(HEADER_ROWS - 1).map((row) => lengthOf(row[at])));
    const heads = Math.max(longestWord(name), Math.min(14, lengthOf(name)), longestWord(others[0]?.[at]));
    return Math.min(sheet.widest, Math.max(7, body, heads) + 2);
  });
}

/** Lines that a text takes at a width, broken between words. */
function linesOf(text: string, width: number): number {
  let lines = 1;
  let used = 0;
  for (const { length } of text.split(' ')) {
    const broken = used > 0 && used + 1 + length > width;
    if (broken) lines += 1;
    used = broken ? length : used + (used > 0 ? 1 : 0) + length;
  }
  return lines;
}

/** Lines of a row at these widths, for its height: not every spreadsheet finds it by itself. */
export function rowLines(cells: readonly (SheetCell | null)[], widths: readonly number[]): number {
  return Math.max(
    1,
    ...cells.map((cell, at) =>
      typeof cell?.value === 'string'
        ? cell.value.split(/\r?\n/).reduce((sum, line) => sum + linesOf(line, widths[at] - 1), 0)
        : 1,
    ),
  );
}
