import { estimate } from '../../../src/base/estimate.ts';
import type { Page, Table } from '../../../src/report/page.ts';
import { pageTables } from '../../../src/report/page-tables.ts';
import { workbookOf } from '../../../src/report/workbook/workbook.ts';
import { openWorkbook, type ReadSheet } from '../../support/open-workbook.ts';
import { examplePages } from '../example-pages.ts';
import { exampleInput } from '../example-review.ts';

const pages = examplePages(exampleInput());
/** Texts that a spreadsheet, XML or a workbook could take for something else. The first six open formulas. */
export const HOSTILE = [
  '=HYPERLINK("http://x","y")',
  '+1+1',
  '-1+1',
  '@SUM(A1)',
  '\t=1',
  "'=1",
  'two\nlines',
  'a\rb',
  ' blanks ',
  '<&>"',
  '_x0041_',
  '\u0007bell',
  'half \ud800 sign',
  '42',
  'Zwölf 🌽',
];

/** 3 November 2024, 1:05 in Chicago, daylight time and an hour later standard time (US rule of 2007: the first Sunday, 2:00). */
export const FIRST_PASS = Date.UTC(2024, 10, 3, 6, 5);
/** Every kind of cell, a total, an interval, a reason. */
export const TABLE: Table = {
  id: 'one',
  caption: 'One of each',
  columns: [
    { key: 'bin', label: 'Bin', quantity: null },
    { key: 'cost', label: 'Cost', quantity: 'money' },
    { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
    { key: 'day', label: 'Day', quantity: 'day' },
    { key: 'at', label: 'At', quantity: 'moment' },
    { key: 'month', label: 'Month', quantity: 'month' },
  ],
  rows: [
    {
      bin: 'North 36',
      cost: estimate(1234.5, 1180, 1291),
      hours: 62.04,
      day: Date.UTC(2024, 9, 5, 3),
      at: FIRST_PASS,
      month: '2024-10',
    },
    {
      bin: 'B2',
      cost: { value: null, why: 'No tariff.' },
      hours: -3.5,
      day: '',
      at: FIRST_PASS + 3_600_000,
      month: '2024-11',
    },
  ],
  total: { bin: 'All', cost: 1238, month: 'All months' },
};
export const NAMES: Table = {
  id: 'names',
  caption: 'Names',
  columns: [{ key: 'bin', label: '=1+1', quantity: null }],
  rows: HOSTILE.map((bin) => ({ bin })),
};

/** A page with these tables. */
export function pageWith(...tables: Table[]): Page {
  return {
    ...pages[0],
    id: 'moisture',
    file: 'moisture.html',
    sections: [{ id: 'bins', title: 'Bins', lead: '', tables }],
  };
}

export const tables = [...pageTables(pageWith(TABLE, NAMES)), ...pages.slice(1).flatMap(pageTables)];
export const file = workbookOf(tables, 'Harvest 2024');
export const { parts, sheets } = openWorkbook(file);
export const values = (sheet: ReadSheet, row: number) => sheet.rows[row].map((cell) => cell?.value ?? null);
