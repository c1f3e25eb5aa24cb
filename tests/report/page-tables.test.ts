import { parse } from 'csv-parse/sync';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { estimate } from '../../src/base/estimate.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import type { Page, Table } from '../../src/report/page.ts';
import { namedApart, pageTables } from '../../src/report/page-tables.ts';
import { examplePages } from './example-pages.ts';
import { exampleInput } from './example-review.ts';

function pageWith(table: Table): Page {
  const [page] = examplePages(exampleInput());
  return { ...page, id: 'moisture', sections: [{ id: 'bins', title: 'Bins', lead: '', table }] };
}

const TABLE: Table = {
  id: 'one',
  caption: 'One',
  columns: [
    { key: 'bin', label: 'Bin', quantity: null },
    { key: 'cost', label: 'Cost', quantity: 'money' },
    { key: 'temp', label: 'Temperature', quantity: 'temperature' },
  ],
  rows: [
    { bin: '=HYPERLINK("http://x","y")', cost: estimate(1234.5, 1180, 1291), temp: -40 },
    { bin: '+1, "two"', cost: { value: null, why: 'No tariff.' }, temp: 0 },
    { bin: '@SUM(A1)\nnext', cost: 3.5, temp: 20 },
  ],
  total: { bin: 'All', cost: 1238 },
};

describe('the CSV of a table', () => {
  const [file] = pageTables(pageWith(TABLE));
  const rows = parse(file.csv) as string[][];
  it('has units in its header, intervals in columns of their own, and the reasons last', () => {
    expect(file.name).toBe('moisture-bins-one');
    expect(rows[0]).toEqual([
      'Bin',
      'Cost (USD)',
      'Cost (USD), low',
      'Cost (USD), high',
      'Temperature (°F)',
      'Why missing',
    ]);
    expect(rows.map((row) => row.length)).toEqual([6, 6, 6, 6, 6]);
  });
  it('keeps the digits of the page, and minus signs that programs read', () => {
    expect(rows[1].slice(1)).toEqual(['1230', '1180', '1290', '-40', '']);
    expect(rows[2].slice(1)).toEqual(['', '', '', '32', 'Cost: No tariff.']);
    expect(rows[3].slice(1)).toEqual(['3.50', '', '', '68', '']);
    expect(rows[4]).toEqual(['All', '1240', '', '', '', '']);
  });
  // A cell that opens with = + - @ runs as a formula in spreadsheets (common practice: OWASP, CSV injection).
  it('defuses text that a spreadsheet would run', () => {
    expect(rows[1][0]).toBe('\'=HYPERLINK("http://x","y")');
    expect(rows[2][0]).toBe('\'+1, "two"');
    expect(rows[3][0]).toBe("'@SUM(A1)\nnext");
  });
});

describe('the CSV of numbers of several kinds', () => {
  const table: Table = {
    id: 'numbers',
    caption: 'Numbers',
    columns: [
      { key: 'what', label: 'What', quantity: null },
      { key: 'value', label: 'Value', quantity: 'own' },
      { key: 'unit', label: 'Unit', quantity: null },
      { key: 'at', label: 'At', quantity: 'moment' },
      { key: 'day', label: 'Day', quantity: 'day' },
      { key: 'month', label: 'Month', quantity: 'month' },
    ],
    rows: [
      {
        what: 'Hours',
        value: { of: 'hours', amount: estimate(4310.4, 4288, 4402) },
        unit: 'h',
        at: Date.UTC(2024, 9, 4, 18, 5),
        day: Date.UTC(2024, 9, 4, 18, 5),
        month: '2024-10',
      },
      {
        what: 'Moisture',
        value: { of: 'moisture', amount: 0.1784 },
        unit: '%',
        at: { value: null, why: 'No log.' },
        day: { value: null, why: 'No log.' },
        month: '2024-11',
      },
    ],
  };
  it('has number, low, high and unit apart, ISO times, and a reason once', () => {
    const [file] = pageTables(pageWith(table));
    expect(parse(file.csv)).toEqual([
      ['What', 'Value', 'Value, low', 'Value, high', 'Unit', 'At', 'Day', 'Month', 'Why missing'],
      ['Hours', '4310', '4290', '4400', 'h', '2024-10-04T13:05-05:00', '2024-10-04', '2024-10', ''],
      ['Moisture', '17.8', '', '', '%', '', '', '2024-11', 'At, Day: No log.'],
    ]);
  });
  it('is the page’s, which says dates as people do', () => {
    const [{ html }] = renderPages([pageWith(table)]);
    expect(html).toContain('>4,310<br><span class="range">(4,290 to 4,400)</span>');
    for (const text of ['4 Oct 2024 13:05', '4 Oct 2024<', 'Oct 2024<', 'Nov 2024<']) expect(html).toContain(text);
  });
});

describe('the CSVs of the example', () => {
  const files = examplePages(exampleInput()).flatMap(pageTables);
  it('have names of their own that fit any file system', () => {
    const names = files.map((file) => file.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9-]+$/);
  });
  it('read back, every row as wide as its header, without a word for nothing', () => {
    expect(files.length).toBeGreaterThan(15);
    for (const { name, csv } of files) {
      const rows = parse(csv) as string[][];
      expect(rows.length, name).toBeGreaterThan(1);
      for (const row of rows) for (const cell of row) expect(cell, name).not.toMatch(/undefined|NaN|^null$|^–/);
    }
  });
  it('stand where their addresses lead, also where single bins have pages of their own', () => {
    const many = pageWith(TABLE);
    const bins = Array.from({ length: 20 }, (_, i) => ({
      ...many.sections[0],
      id: `bin-B${i + 1}`,
      title: `Bin ${i + 1}`,
    }));
    const paged = { ...many, file: 'moisture.html', sections: [...many.sections, ...bins] };
    const all = [...examplePages(exampleInput()).slice(1), paged].filter(
      (page, at, of) => of.findLastIndex(({ id }) => id === page.id) === at,
    );
    const documents = new Map(renderPages(all).map(({ file, html }) => [file, parseHTML(html).document]));
    expect(documents.has('moisture-bins-2.html')).toBe(true);
    const tables = all.flatMap(pageTables);
    expect(tables.length).toBeGreaterThan(30);
    for (const { address, caption } of tables) {
      const [file, id] = address.split('#');
      const table = documents.get(file)?.getElementById(id);
      expect(table?.querySelector('caption')?.textContent?.replaceAll('\u00a0', ' '), address).toBe(caption);
    }
  });
});

describe('tables of one name', () => {
  it('are told apart by a number, and none takes the place of another', () => {
    const [one] = pageTables(pageWith(TABLE));
    const named = (...names: string[]) => namedApart(names.map((name) => ({ ...one, name }))).map(({ name }) => name);
    expect(named('a', 'b')).toEqual(['a', 'b']);
    expect(named('a', 'a', 'a')).toEqual(['a', 'a-2', 'a-3']);
    expect(named('a', 'a', 'a-2')).toEqual(['a', 'a-3', 'a-2']);
  });
});
