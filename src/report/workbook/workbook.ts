import { type CellObject, utils, type WorkBook, type WorkSheet, write } from '@e965/xlsx';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { namedApart, type TableFile } from '../page-tables.ts';
import { columnWidths, rowLines } from './column-widths.ts';
import { dress } from './dress.ts';
import { gridSheet } from './grid-sheet.ts';
import { INDEX, indexSheet } from './index-sheet.ts';
import { HEADER_ROWS, type Sheet, type SheetCell } from './sheet.ts';
import { sheetNames } from './sheet-name.ts';
import { sheetText } from './sheet-text.ts';

/** Height of a line and of the tallest row, points. */
const LINE_PT = 15;
const TALLEST_PT = 405;

/** Formats of one's own are numbered from here on; those below belong to every workbook (ECMA-376 part 1, 18.8.30). */
const FIRST_FORMAT = 164;
const BUILT_IN = { 0: 'General', 3: '#,##0', 4: '#,##0.00' };

/** Number formats by their ids, all given, so that no workbook read or written before leaves its own. */
function formatsOf(sheets: readonly Sheet[]): Record<number, string> {
  const used = new Set(sheets.flatMap((sheet) => sheet.rows.flat().flatMap((cell) => cell?.format ?? [])));
  for (const format of Object.values(BUILT_IN)) used.delete(format);
  const own = [...used].sort().map((format, at) => [FIRST_FORMAT + at, format]);
  return { ...BUILT_IN, ...Object.fromEntries(own) };
}

function cellObject(cell: SheetCell): CellObject {
  const { value, format, link, tip } = cell;
  // Nothing but the look of a header or a total.
  if (value === '') return { t: 'z', z: 'General' };
  const of: CellObject =
    typeof value === 'string' ? { t: 's', v: sheetText(value) } : { t: 'n', v: value, z: format ?? 'General' };
  return link === undefined ? of : { ...of, l: { Target: link, Tooltip: tip } };
}

function worksheet(sheet: Sheet): WorkSheet {
  const widths = columnWidths(sheet);
  const out: WorkSheet = {};
  sheet.rows.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell !== null && (cell.value !== '' || cell.style !== 'body')) {
        out[utils.encode_cell({ r, c })] = cellObject(cell);
      }
    });
  });
  out['!ref'] = utils.encode_range({ s: { r: 0, c: 0 }, e: { r: sheet.rows.length - 1, c: widths.length - 1 } });
  out['!cols'] = widths.map((width) => ({ width }));
  out['!rows'] = sheet.rows.map((row) => ({ hpt: Math.min(TALLEST_PT, LINE_PT * rowLines(row, widths)) }));
  return out;
}

/**
 * The tables of a review as a workbook (ECMA-376 part 1, SpreadsheetML), a sheet each and an index before them. The same
 * tables give the same bytes, whenever and wherever.
 *
 * @param title  the season's
 * @throws Error for a sheet that the format cannot hold
 */
export function workbookOf(tables: readonly TableFile[], title: string): Uint8Array {
  const files = namedApart(tables);
  const names = sheetNames([INDEX, ...files.map((file) => file.name)]).slice(1);
  const sheets = [
    indexSheet(files.map((file, at) => ({ file, sheet: names[at] }))),
    ...files.map((file, at) => gridSheet(file.grid, names[at], INDEX)),
  ];
  const book = {
    SheetNames: sheets.map((sheet) => sheet.name),
    Sheets: Object.fromEntries(sheets.map((sheet) => [sheet.name, worksheet(sheet)])),
    Props: { Title: sheetText(title) },
    // The header on every sheet of paper.
    Workbook: {
      Names: sheets.map(({ name }, at) => ({
        Name: '_xlnm.Print_Titles',
        Sheet: at,
        Ref: `'${name}'!$1:$${HEADER_ROWS}`,
      })),
    },
    SSF: formatsOf(sheets),
  } as WorkBook;
  // `ignoreEC`: a year or a rule's number that is a name, and so text, is no mistake to be marked.
  const plain = unzipSync(write(book, { type: 'buffer', bookType: 'xlsx', bookSST: true, ignoreEC: true }));
  const parts = new Map(Object.entries(plain).map(([name, bytes]) => [name, strFromU8(bytes)]));
  dress(parts, sheets);
  // What names the parts comes first, where readers that take a file as it comes look for it.
  const order = [...parts.keys()].sort(
    (a, b) => Number(b.startsWith('[')) - Number(a.startsWith('[')) || (a < b ? -1 : 1),
  );
  // The format's first day, by the local fields that the zip takes, so that it is the same in every zone.
  const mtime = new Date(1980, 0, 1);
  return zipSync(Object.fromEntries(order.map((name) => [name, strToU8(parts.get(name) ?? '')])), { level: 6, mtime });
}
