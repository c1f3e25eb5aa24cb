import { describe, expect, it } from 'vitest';
import { pageTables } from '../../../src/report/page-tables.ts';
import { sheetNames } from '../../../src/report/workbook/sheet-name.ts';
import { workbookOf } from '../../../src/report/workbook/workbook.ts';
import { openWorkbook, shownAs } from '../../support/open-workbook.ts';
import { FIRST_PASS, HOSTILE, NAMES, pageWith, parts, sheets, TABLE, tables, values } from './example-workbook.ts';

describe('a sheet', () => {
  const sheet = sheets[1];
  it('has names, then units, then the rows; intervals, offsets and reasons in columns of their own', () => {
    expect(sheet.name).toBe('moisture-bins-one');
    expect(values(sheet, 0)).toEqual([
      'Bin',
      'Cost',
      'Cost, low',
      'Cost, high',
      'Fan hours, measured',
      'Day',
      'At',
      'At, ahead of UTC',
      'Month',
      'Why missing',
    ]);
    const clock = 'local time, America/Chicago';
    expect(values(sheet, 1)).toEqual([null, 'USD', 'USD', 'USD', 'h', 'local day', clock, 'h', 'month', null]);
    expect(sheet.rows).toHaveLength(5);
  });
  it('has real numbers at the digits of the page', () => {
    const shown = sheet.rows
      .slice(2)
      .map((row) => row.slice(1, 5).map((cell) => (cell === null ? null : shownAs(cell.value as number, cell.format))));
    expect(shown).toEqual([
      ['1,230', '1,180', '1,290', '62.0'],
      [null, null, null, '-3.5'],
      ['1,240', null, null, null],
    ]);
    expect(sheet.cells.get('B3')).toMatchObject({ value: 1230, bold: false });
    expect(sheet.cells.get('B5')).toMatchObject({ value: 1240, bold: true });
  });
  // Serial dates by hand: 1 January 2024 is day 45292 (18.17.4.1: day 61 is 1 March 1900), 2024 has a 29 February:
  // 4 October is 277 days on, 3 November 307, 1 October 274, 1 November 305.
  it('has real dates by the clock of the site, both passes of autumn’s hour told apart by their offset', () => {
    expect(sheet.cells.get('F3')).toMatchObject({ value: 45292 + 277, format: 'd mmm yyyy' });
    for (const ref of ['G3', 'G4']) {
      expect(sheet.cells.get(ref)?.value).toBeCloseTo(45292 + 307 + 65 / 1440, 9);
      expect(sheet.cells.get(ref)?.format).toBe('d mmm yyyy hh:mm');
    }
    expect([sheet.cells.get('H3')?.value, sheet.cells.get('H4')?.value]).toEqual([-5, -6]);
    expect(sheet.cells.get('I3')).toMatchObject({ value: 45292 + 274, format: 'mmm yyyy' });
    expect(sheet.cells.get('I4')?.value).toBe(45292 + 305);
    expect(sheet.cells.get('I5')?.value).toBe('All months');
    expect(sheet.cells.get('J4')?.value).toBe('Cost: No tariff.');
  });
  it('gives no column of offsets where no moment stands twice', () => {
    const rows = TABLE.rows.map((row) => ({ ...row, at: FIRST_PASS + 7_200_000 }));
    const [one] = pageTables(pageWith({ ...TABLE, rows }));
    expect(one.grid.columns.map(({ part }) => part)).not.toContain('offset');
  });
  it('says text as it stands, as a string and never a formula, also once it is edited', () => {
    const texts = sheets[2].rows.slice(2).map((row) => row[0]);
    expect(texts.map((cell) => cell?.value)).toEqual(
      HOSTILE.map((text) => (text === 'half \ud800 sign' ? 'half \ufffd sign' : text)),
    );
    const quoted = texts.filter((cell) => cell?.quotePrefix).map((cell) => cell?.value);
    expect(quoted).toEqual(HOSTILE.slice(0, 6));
    expect(sheets[2].cells.get('A1')?.value).toBe('=1+1');
    for (const [name, xml] of parts) expect(xml.getElementsByTagName('f').length, name).toBe(0);
  });
  it('cuts what no cell can hold, and says so with an ellipsis', () => {
    const long = { ...NAMES, rows: [{ bin: 'x'.repeat(40_000) }] };
    const [, sheet] = openWorkbook(workbookOf(pageTables(pageWith(long)), '')).sheets;
    const text = String(sheet.cells.get('A3')?.value);
    expect([text.length, text.at(-1)]).toEqual([32_767, '…']);
  });
});

describe('the index', () => {
  const [index, ...others] = sheets;
  it('comes first and leads to every sheet, its page and its CSV, and each sheet leads back', () => {
    expect(index.name).toBe('index');
    expect(values(index, 0)).toEqual(['Sheet', 'Page', 'Section', 'What it holds', 'Rows', 'Total', 'As CSV']);
    expect(index.rows.slice(2).map((row) => row[0]?.value)).toEqual(others.map((sheet) => sheet.name));
    index.rows.slice(2).forEach((row, at) => {
      const { name, address, caption } = tables[at];
      const line = at + 3;
      expect(index.links.get(`A${line}`)).toBe(`#'${others[at].name}'!A1`);
      expect(index.links.get(`B${line}`)).toBe(address);
      expect(index.links.get(`G${line}`)).toBe(`tables/${name}.csv`);
      expect(row[3]?.value).toBe(caption);
      const body = others[at].rows.length - 2;
      expect(row[4]?.value).toBe(row[5]?.value === 'last row' ? body - 1 : body);
      expect(others[at].links.get('A1')).toBe("#'index'!A1");
    });
  });
  it('says which tables have a total', () => {
    expect(index.rows[2].slice(3, 6).map((cell) => cell?.value ?? null)).toEqual(['One of each', 2, 'last row']);
    expect(index.rows[3].slice(3, 6).map((cell) => cell?.value ?? null)).toEqual(['Names', HOSTILE.length, null]);
  });
});

describe('names of sheets', () => {
  const long = 'methods-other-crops-other-isotherms-points';
  it('are those of the tables, or as long as the format takes, and do not hang on the others', () => {
    const [short, cut] = sheetNames(['moisture-bins-one', long]);
    expect(short).toBe('moisture-bins-one');
    expect(cut).toMatch(/^methods-other-crops-other-[0-9a-z]{5}$/);
    expect(sheetNames([long, `${long}-more`])[0]).toBe(cut);
    expect(sheetNames([long, long])).toEqual([cut, expect.not.stringMatching(cut)]);
  });
  // Up to 31 characters, none of []:*?/\, no apostrophe at an end, not History, none twice whatever the case (common practice, from memory).
  it('fit the format', () => {
    const names = sheets.map((sheet) => sheet.name);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^(?!'|history$)[^[\]:*?/\\]{1,31}(?<!')$/i);
  });
});
