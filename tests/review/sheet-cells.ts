import { unguarded } from '../../src/base/csv-text.ts';
import type { ReadCell, ReadSheet } from '../support/open-workbook.ts';

/** A cell of a table in the workbook beside the same one in the CSV and on the page. */
export interface SheetCells {
  where: string;
  cell: ReadCell | null;
  /** what the CSV says, an apostrophe that guards it taken off */
  csv: string;
  /** what the page shows in the column's place; null where the page has no such column (ends, reasons) */
  shown: Element | null;
}

/** What a column is called in the CSV: its name with the unit, `, low` last. Times have their clock there, in every cell. */
function csvHead(name: string, unit: string): string {
  const [, label, end = ''] = /^(.*?)(, low|, high)?$/s.exec(name) as RegExpExecArray;
  return unit === '' || /^(local (day|time)|month)/.test(unit) ? `${label}${end}` : `${label} (${unit})${end}`;
}

/** Pages keep a number and its unit together by a no-break space; files carry a plain one. */
const textOf = (element: Element | null | undefined) => (element?.textContent ?? '').replaceAll('\u00a0', ' ');

/** Columns of a sheet by their CSV's header; the offsets from UTC are left out, which the CSV says in its times. */
export function sheetColumns(sheet: ReadSheet): { head: string; at: number }[] {
  const [names, units] = sheet.rows;
  return names
    .map((cell, at) => ({ head: csvHead(String(cell?.value), String(units[at]?.value ?? '')), at }))
    .filter(({ head }) => !head.includes(', ahead of UTC'));
}

/** Every cell of a table, by row and column. @param table  of the page */
export function sheetCells(name: string, sheet: ReadSheet, csv: string[][], table: Element): SheetCells[] {
  const [names, , ...body] = sheet.rows;
  const [header, ...rows] = csv;
  const drawn = [...table.querySelectorAll('tbody tr, tfoot tr')].map((row) => [...row.children]);
  const known = [...table.querySelectorAll('thead tr.units td')].map((td) => textOf(td.querySelector('.known')));
  const labels = [...table.querySelectorAll('thead tr:first-child th')].map((th, at) =>
    known[at] ? `${textOf(th)}, ${known[at]}` : textOf(th),
  );
  return rows.flatMap((row, r) =>
    sheetColumns(sheet).map(({ at }, c) => {
      const onPage = labels.indexOf(String(names[at]?.value));
      return {
        where: `${name}, ${row[0]}, ${header[c]}`,
        cell: body[r]?.[at] ?? null,
        csv: unguarded(row[c]),
        shown: onPage < 0 ? null : drawn[r][onPage],
      };
    }),
  );
}
