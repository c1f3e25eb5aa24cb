import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, guarded, unguarded } from '../../src/base/csv-text.ts';

/** The signs that open a formula (OWASP, "CSV Injection": = + - @, tab, carriage return; line feed and wide forms from memory). */
const OPENERS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

/** What a spreadsheet makes cells of: the file's comma cells, or, in other languages, what lies between semicolons, tabs and lines. */
const cellsOf = (text: string) => text.split(/[;\t\r\n]/);

describe('a text in a CSV file', () => {
  it.each([
    ["=cmd|' /C calc'!A0", "'=cmd|' /C calc'!A0"],
    ['+1-800-555', "'+1-800-555"],
    ['-2+3', "'-2+3"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1+1', "'\t'=1+1"],
    ['\r=1+1', "'\r'=1+1"],
    ['  =1+1', "'  =1+1"],
    // A spreadsheet set to semicolons begins a cell behind one, whatever is quoted.
    ['North;=1+1', "North;'=1+1"],
    ["'=1", "''=1"],
    ['＝1+1', "'＝1+1"],
  ])('%j opens no formula', (text, safe) => {
    expect(guarded(text)).toBe(safe);
  });

  it.each(['-9999', '-12.5', '-12,5', '+0.5', '-.5', '-1.2e-3', '2024-10-04;B1;-12.5', "it's", 'a=b', 'a - b', ''])(
    '%j stands as it stood: a number, or nothing that opens',
    (text) => {
      expect(guarded(text)).toBe(text);
    },
  );

  const odd = fc.string({
    unit: fc.constantFrom(...OPENERS, "'", ' ', ';', ',', '"', 'a', '5', '.', 'e', '\u00a0'),
    maxLength: 12,
  });

  it('comes back, whatever it is, through any reader of commas', () => {
    fc.assert(
      fc.property(odd, odd, (a, b) => {
        const [row] = parse(`${csvText(a)},${csvText(b)},1\n`) as string[][];
        expect(row.map(unguarded)).toEqual([a, b, '1']);
      }),
      { seed: 20241004, numRuns: 4000 },
    );
  });

  it('leaves no cell that opens a formula, however a reader parts it', () => {
    fc.assert(
      fc.property(odd, (text) => {
        for (const cell of [guarded(text), ...cellsOf(guarded(text))]) {
          const bare = cell.trim();
          // Nothing but a number opens with a sign: digits, points or commas between them, an exponent.
          if (OPENERS.includes(bare[0])) expect(bare, JSON.stringify(text)).toMatch(/^[+-][\d.,]*\d(e[+-]?\d+)?$/);
        }
      }),
      { seed: 20241004, numRuns: 4000 },
    );
  });
});
