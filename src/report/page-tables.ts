import { csvText } from '../base/csv-text.ts';
import { isoDay, isoMoment } from './date-text.ts';
import { cellNumber, cellText, isTime, middleOf } from './html/cell.ts';
import { slug } from './html/markup.ts';
import type { Cell, Column, Page, Table } from './page.ts';
import type { Units } from './units.ts';

/** A page's table as a file for a spreadsheet. */
export interface TableFile {
  /** `moisture-north-36-shares`, without ending */
  name: string;
  csv: string;
}

type Row = Readonly<Record<string, Cell>>;

interface Field {
  header: string;
  of(row: Row): string;
}

/** A number for programs at the digits of the page: no grouping, an ASCII minus. */
function plain(text: string): string {
  return text.replaceAll(',', '').replace('−', '-');
}

/** Text and times: words as they stand, days and moments by ISO 8601. */
function wordField(column: Column, units: Units): Field {
  const { key, quantity } = column;
  return {
    header: csvText(column.label),
    of: (row) => {
      const cell = row[key];
      if (typeof cell === 'string') return csvText(cell);
      if (typeof cell !== 'number') return '';
      return quantity === 'day' ? isoDay(units.zone, cell) : quantity === 'moment' ? isoMoment(units.zone, cell) : '';
    },
  };
}

/** Numbers: the middle, and where any row has an interval the ends in columns of their own. */
function numberFields(column: Column, rows: readonly Row[], units: Units): Field[] {
  const { quantity, key, label, known } = column;
  const unit = quantity === null || quantity === 'own' || isTime(quantity) ? '' : units.unit(quantity);
  const name = known === undefined ? label : `${label}, ${known}`;
  const head = unit === '' ? name : `${name} (${unit})`;
  const value = (row: Row) => {
    const cell = row[key];
    if (typeof cell === 'string') return csvText(cell);
    const found = cellNumber(cell, column);
    return found === null ? '' : plain(units.number(found.quantity, middleOf(found.amount)));
  };
  const ends = (row: Row) => {
    const found = cellNumber(row[key], column);
    const { amount } = found ?? { amount: null };
    return found === null || typeof amount !== 'object' || amount === null ? null : units.ends(found.quantity, amount);
  };
  const end = (at: 0 | 1) => (row: Row) => plain(ends(row)?.[at] ?? '');
  const out: Field[] = [{ header: csvText(head), of: value }];
  if (rows.some((row) => ends(row) !== null)) {
    out.push({ header: csvText(`${head}, low`), of: end(0) }, { header: csvText(`${head}, high`), of: end(1) });
  }
  return out;
}

/** Why the missing cells of a row are missing, each reason once. */
function reasonsOf(row: Row, columns: readonly Column[], units: Units): string {
  const lacking = new Map<string, string[]>();
  for (const column of columns) {
    if (row[column.key] === undefined) continue;
    const { why } = cellText(row[column.key], column, units);
    if (why !== null) lacking.set(why, [...(lacking.get(why) ?? []), column.label]);
  }
  return [...lacking].map(([why, labels]) => `${labels.join(', ')}: ${why}`).join(' ');
}

function csvOf(table: Table, units: Units): string {
  const { columns } = table;
  const rows = table.total === undefined ? table.rows : [...table.rows, table.total];
  const all = columns.flatMap((column) =>
    column.quantity === null || isTime(column.quantity)
      ? [wordField(column, units)]
      : numberFields(column, rows, units),
  );
  const reasons = rows.map((row) => reasonsOf(row, columns, units));
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
