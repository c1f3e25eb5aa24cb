import { instantsOf, toLocalMs, type Zone } from '../../base/zone.ts';
import { cellNumber, cellText, isTime, middleOf } from '../html/cell.ts';
import type { Cell, Column, Table, TimeKind } from '../page.ts';
import type { Units } from '../units.ts';
import type { Grid, GridCell, GridColumn } from './grid.ts';

type Row = Readonly<Record<string, Cell>>;

/** A number for programs at the digits of the page: no grouping, an ASCII minus. */
function numberCell(text: string): GridCell {
  return { kind: 'number', digits: text.replaceAll(',', '').replace('−', '-') };
}

function textCell(text: string): GridCell | null {
  return text === '' ? null : { kind: 'text', text };
}

/** Words as they stand and times of a column of text or times. */
function wordCell(cell: Cell | undefined, time: TimeKind | null): GridCell | null {
  if (typeof cell === 'string') {
    return time === 'month' && /^\d{4}-\d{2}$/.test(cell) ? { kind: 'month', month: cell } : textCell(cell);
  }
  return typeof cell === 'number' && (time === 'day' || time === 'moment') ? { kind: time, utcMs: cell } : null;
}

/** Hours that the local clock is ahead of UTC, where the clock shows a moment of a column twice; else no column. */
function offsetColumn(column: GridColumn, zone: Zone): GridColumn[] {
  const moments = column.cells.map((cell) => (cell?.kind === 'moment' ? cell.utcMs : null));
  const twice = (utcMs: number | null) => utcMs !== null && instantsOf(zone, toLocalMs(zone, utcMs)).length > 1;
  if (!moments.some(twice)) return [];
  const cells = moments.map((utcMs) => (utcMs === null ? null : numberCell(String(zone.offsetMs(utcMs) / 3_600_000))));
  return [{ ...column, unit: 'h', part: 'offset', time: null, cells }];
}

function wordColumns(column: Column, rows: readonly Row[], units: Units): GridColumn[] {
  const time = isTime(column.quantity) ? column.quantity : null;
  const cells = rows.map((row) => wordCell(row[column.key], time));
  const words: GridColumn = { name: column.label, unit: '', part: 'value', time, cells };
  return [words, ...offsetColumn(words, units.zone)];
}

/** Numbers: the middle, and where any row has an interval the ends in columns of their own. */
function numberColumns(column: Column, rows: readonly Row[], units: Units): GridColumn[] {
  const { quantity, key, label, known } = column;
  const unit = quantity === null || quantity === 'own' || isTime(quantity) ? '' : units.unit(quantity);
  const name = known === undefined ? label : `${label}, ${known}`;
  const middles = rows.map((row) => {
    const cell = row[key];
    if (typeof cell === 'string') return textCell(cell);
    const found = cellNumber(cell, column);
    return found === null ? null : numberCell(units.number(found.quantity, middleOf(found.amount)));
  });
  const ends = rows.map((row) => {
    const found = cellNumber(row[key], column);
    const amount = found?.amount ?? null;
    return found === null || typeof amount !== 'object' || amount === null ? null : units.ends(found.quantity, amount);
  });
  const one = { name, unit, time: null };
  const end = (at: 0 | 1) => ends.map((of) => (of === null ? null : numberCell(of[at])));
  return [
    { ...one, part: 'value', cells: middles },
    ...(ends.some((of) => of !== null)
      ? [
          { ...one, part: 'low' as const, cells: end(0) },
          { ...one, part: 'high' as const, cells: end(1) },
        ]
      : []),
  ];
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

/**
 * A page's table as its files hold it, a total last.
 *
 * @throws RangeError for a number that is not finite
 */
export function tableGrid(table: Table, pageUnits: Units): Grid {
  const units = pageUnits.withMoneyIn(table.currency ?? pageUnits.currency);
  const rows = table.total === undefined ? table.rows : [...table.rows, table.total];
  const columns = table.columns.flatMap((column) =>
    column.quantity === null || isTime(column.quantity)
      ? wordColumns(column, rows, units)
      : numberColumns(column, rows, units),
  );
  const reasons = rows.map((row) => textCell(reasonsOf(row, table.columns, units)));
  if (reasons.some((reason) => reason !== null)) {
    columns.push({ name: 'Why missing', unit: '', part: 'why', time: null, cells: reasons });
  }
  return { columns, rows: rows.length, hasTotal: table.total !== undefined, zone: units.zone };
}
