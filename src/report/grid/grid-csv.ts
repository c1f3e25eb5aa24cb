import { csvText } from '../../base/csv-text.ts';
import type { Zone } from '../../base/zone.ts';
import { isoDay, isoMoment } from '../date-text.ts';
import type { Grid, GridCell, GridColumn } from './grid.ts';

/** `Cost (USD), low` */
function header({ name, unit, part }: GridColumn): string {
  const head = unit === '' ? name : `${name} (${unit})`;
  return csvText(part === 'low' || part === 'high' ? `${head}, ${part}` : head);
}

function cellCsv(cell: GridCell | null, zone: Zone): string {
  if (cell === null) return '';
  switch (cell.kind) {
    case 'text':
      return csvText(cell.text);
    case 'number':
      return cell.digits;
    case 'day':
      return isoDay(zone, cell.utcMs);
    case 'moment':
      return isoMoment(zone, cell.utcMs);
    case 'month':
      return cell.month;
  }
}

/** A table as CSV (RFC 4180, `\r\n`): units in the header, times by ISO 8601, which carries its offset, so that none needs a column. */
export function gridCsv(grid: Grid): string {
  const columns = grid.columns.filter((column) => column.part !== 'offset');
  const rows = Array.from({ length: grid.rows }, (_, at) =>
    columns.map((column) => cellCsv(column.cells[at], grid.zone)),
  );
  return [columns.map(header), ...rows].map((line) => `${line.join(',')}\r\n`).join('');
}
