import { csvText } from '../base/csv-text.ts';
import { cellText } from './html/cell.ts';
import { slug } from './html/markup.ts';
import { DASH } from './number-text.ts';
import type { Cell, Column, Page, Table } from './page.ts';
import type { Units } from './units.ts';

/** A page's table as a file for a spreadsheet. */
export interface TableFile {
  /** `moisture-north-36-shares`, without ending */
  name: string;
  csv: string;
}

/** A number for programs at the digits of the page: no grouping, an ASCII minus. */
function plain(text: string): string {
  return text.replaceAll(',', '').replace('−', '-');
}

interface Field {
  header: string;
  of(row: Readonly<Record<string, Cell>>): string;
}

function fields(column: Column, rows: readonly Readonly<Record<string, Cell>>[], units: Units): Field[] {
  const { quantity, key } = column;
  if (quantity === null) {
    return [
      {
        header: csvText(column.label),
        of: (row) => csvText(cellText(row[key] ?? '', column, units).text.replace(DASH, '')),
      },
    ];
  }
  const unit = units.unit(quantity);
  const head = unit === '' ? column.label : `${column.label} (${unit})`;
  const cell = (row: Readonly<Record<string, Cell>>) => row[key];
  const value = (row: Readonly<Record<string, Cell>>) => {
    const of = cell(row);
    if (typeof of === 'string') return csvText(of);
    const middle = typeof of === 'object' && of !== null ? of.value : (of ?? null);
    return middle === null ? '' : plain(units.number(quantity, middle));
  };
  const out: Field[] = [{ header: csvText(head), of: value }];
  const wide = rows.some((row) => {
    const of = cell(row);
    return typeof of === 'object' && of !== null && 'interval' in of && of.interval !== null;
  });
  const end = (at: 0 | 1) => (row: Readonly<Record<string, Cell>>) => {
    const of = cell(row);
    if (typeof of !== 'object' || of === null || !('interval' in of) || of.interval === null || of.value === null)
      return '';
    return plain(units.number(quantity, of.interval[at], of.value));
  };
  if (wide) out.push({ header: csvText(`${head}, low`), of: end(0) }, { header: csvText(`${head}, high`), of: end(1) });
  return out;
}

function csvOf(table: Table, units: Units): string {
  const rows = table.total === undefined ? table.rows : [...table.rows, table.total];
  const all = table.columns.flatMap((column) => fields(column, rows, units));
  const reasons = rows.map((row) =>
    table.columns
      .map((column) => ({ column, shown: cellText(row[column.key], column, units) }))
      .filter(({ shown, column }) => shown.why !== null && row[column.key] !== undefined)
      .map(({ column, shown }) => `${column.label}: ${shown.why}`)
      .join(' '),
  );
  if (reasons.some((reason) => reason !== '')) {
    all.push({ header: 'Why missing', of: (row) => csvText(reasons[rows.indexOf(row)]) });
  }
  const lines = [all.map((field) => field.header), ...rows.map((row) => all.map((field) => field.of(row)))];
  return `${lines.map((line) => line.join(',')).join('\r\n')}\r\n`;
}

/** The tables of a page as CSV files: the page's numbers at the page's digits, units in the header, intervals in columns of their own. */
export function pageTables(page: Page): TableFile[] {
  return page.sections.flatMap((section) =>
    [...(section.table === undefined ? [] : [section.table]), ...(section.tables ?? [])]
      .filter((table) => table.rows.length > 0)
      .map((table) => ({ name: `${page.id}-${slug(section.id)}-${slug(table.id)}`, csv: csvOf(table, page.units) })),
  );
}
