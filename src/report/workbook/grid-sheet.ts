import { localDayOf, toLocalMs, type Zone } from '../../base/zone.ts';
import type { Grid, GridCell, GridColumn } from '../grid/grid.ts';
import type { CellStyle, Sheet, SheetCell } from './sheet.ts';
import { textCell } from './sheet-text.ts';

/** 30 December 1899, day 0 of a workbook's dates from March 1900 on (ECMA-376 part 1, 18.17.4.1), to 1970. */
const DAYS_TO_1970 = 25_569;

/** A local time as days since 30 December 1899, to the minute, as pages and CSV say it. */
function serial(localMs: number): number {
  return Math.floor(localMs / 60_000) / 1440 + DAYS_TO_1970;
}

/** As many decimals as the page shows, thousands grouped. */
function numberFormat(digits: string): string {
  const decimals = digits.split('.')[1]?.length ?? 0;
  return decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}`;
}

function sheetCell(cell: GridCell | null, zone: Zone, style: CellStyle): SheetCell | null {
  if (cell === null) return style === 'total' ? { value: '', style } : null;
  const when = style === 'body' ? 'time' : style;
  switch (cell.kind) {
    case 'text':
      return style === 'body' ? textCell(cell.text) : { value: cell.text, style };
    case 'number':
      return { value: Number(cell.digits), format: numberFormat(cell.digits), style };
    case 'day': {
      const day = localDayOf(zone, cell.utcMs);
      return { value: serial(day), format: 'd mmm yyyy', style: when };
    }
    case 'moment':
      return { value: serial(toLocalMs(zone, cell.utcMs)), format: 'd mmm yyyy hh:mm', style: when };
    case 'month': {
      const [year, month] = cell.month.split('-').map(Number);
      return { value: serial(Date.UTC(year, month - 1, 1)), format: 'mmm yyyy', style: when };
    }
  }
}

function nameOf({ name, part }: GridColumn): string {
  if (part === 'offset') return `${name}, ahead of UTC`;
  return part === 'low' || part === 'high' ? `${name}, ${part}` : name;
}

function unitOf({ unit, time }: GridColumn, zone: Zone): string {
  if (time === 'moment') return `local time, ${zone.name}`;
  if (time === 'day') return 'local day';
  return time === 'month' ? 'month' : unit;
}

/** A table as a worksheet: names, units, rows, a total last. The first cell leads back to the index. */
export function gridSheet(grid: Grid, name: string, index: string): Sheet {
  const { columns, rows, hasTotal, zone } = grid;
  const isNumber = ({ cells }: GridColumn) => cells.some((cell) => cell?.kind === 'number');
  const names = columns.map((column, at): SheetCell => {
    const head: SheetCell = { value: nameOf(column), style: isNumber(column) ? 'number name' : 'name' };
    return at === 0 ? { ...head, link: `#'${index}'!A1`, tip: 'Back to the index' } : head;
  });
  const units = columns.map(
    (column): SheetCell => ({ value: unitOf(column, zone), style: isNumber(column) ? 'number unit' : 'unit' }),
  );
  const body = Array.from({ length: rows }, (_, at) =>
    columns.map((column) => sheetCell(column.cells[at], zone, hasTotal && at === rows - 1 ? 'total' : 'body')),
  );
  return { name, rows: [names, units, ...body], widest: 60 };
}
