import type { TableFile } from '../page-tables.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { textCell } from './sheet-text.ts';

export const INDEX = 'index';

const HEADS: readonly [string, string][] = [
  ['Sheet', 'leads to the sheet; the first cell there leads back'],
  ['Page', 'leads to the table on its page'],
  ['Section', 'of the page'],
  [
    'What it holds',
    'estimates from logs: confirm by probe and moisture meter; local codes and licensed practice come first',
  ],
  ['Rows', 'without the total'],
  ['Total', 'where there is one'],
  ['As CSV', 'the same numbers'],
];

/** The first sheet: what each of the others holds, and where it stands on the pages. */
export function indexSheet(tables: readonly { sheet: string; file: TableFile }[]): Sheet {
  const link = (value: string, to: string): SheetCell => ({ value, style: 'link', link: to });
  const rows = tables.map(({ sheet, file: { name, page, section, caption, address, grid } }) => [
    link(sheet, `#'${sheet}'!A1`),
    link(page, address),
    textCell(section),
    textCell(caption),
    { value: grid.hasTotal ? grid.rows - 1 : grid.rows, format: '#,##0', style: 'body' as const },
    textCell(grid.hasTotal ? 'last row' : ''),
    link(`${name}.csv`, `tables/${name}.csv`),
  ]);
  return {
    name: INDEX,
    rows: [
      HEADS.map(([name]): SheetCell => ({ value: name, style: name === 'Rows' ? 'number name' : 'name' })),
      HEADS.map(([name, words]): SheetCell => ({ value: words, style: name === 'Rows' ? 'number unit' : 'unit' })),
      ...rows,
    ],
    widest: 90,
  };
}
