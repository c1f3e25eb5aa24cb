import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numbers } from '../../../src/tables/arrow.ts';
import { loadOf } from './load-of.ts';
import { fileOf } from './season-of.ts';

const number = fc.integer({ min: -400, max: 1200 }).map((n) => (n / 10).toFixed(1));
const missing = fc.constantFrom('', 'NA', 'n/a', '--', ' na ');
const bad = fc.constantFrom('ERR', '12..5', 'open', '"a\nb"', '"12""5"', '1e999');
const cell = fc.oneof({ weight: 4, arbitrary: number }, missing, bad);
const day = fc.integer({ min: 0, max: 9 }).map((d) => `2024-10-0${d || 9} 12:${d}0`.replace(':90', ':59'));
const stamp = fc.oneof({ weight: 5, arbitrary: day }, fc.constantFrom('', 'noon', '2024-10-04', '2024-02-30 10:00'));
const place = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom('B1,C1,1', 'b1,C1,3', 'B2,C1,1') },
  fc.constantFrom('B9,C1,1', 'B1,C1,7', ',C1,1'),
);
const row = fc.oneof(
  { weight: 8, arbitrary: fc.tuple(stamp, place, cell, cell).map((parts) => parts.join(',')) },
  fc.constantFrom('', '2024-10-04 12:00,B1,C1', '2024-10-04 12:00,B1,C1,1,1,2,3', 'garbage'),
);

describe('the account of a file', () => {
  it('always adds up, agrees with the table and names a line for each rejected thing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 40 }), async (rows) => {
        // One good row, so that the file as a whole can be read.
        const text = [
          'time,bin,cable,sensor,temperature (degF),moisture (%)',
          '2024-10-05 00:00,B1,C1,1,50.5,15.5',
          ...rows,
          '',
        ].join('\n');
        const bounds = { startsMs: Date.UTC(2024, 9, 3, 5), endsMs: Date.UTC(2024, 9, 7, 5) };
        const { load, tables } = await loadOf({ 'a.csv': text }, [fileOf('grain', 'a.csv')], bounds);
        const file = load.files[0];
        const records = rows.filter((one) => one.trim() !== '').length + 1;
        expect(file.rows).toBe(records);
        expect(file.cells).toBe(2 * records);
        expect(file.kept + file.missing + file.rejected + file.outside).toBe(file.cells);
        const values = [...numbers(tables.readings, 'temp_c'), ...numbers(tables.readings, 'moisture_wb')];
        expect(values.filter((value) => !Number.isNaN(value)).length).toBe(file.kept);
        expect(load.rejects.reduce((sum, one) => sum + (one.column === null ? 2 : 1), 0)).toBe(file.rejected);
        const lines = text.split('\n');
        for (const reject of load.rejects) {
          if (reject.column === null) expect(reject.text.split('\n')[0]).toBe(lines[reject.line - 1].trimEnd());
          expect(reject.line).toBeGreaterThan(2);
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  // season-format: empty, NA, n/a, -- are missing; any other text where a number is due is a rejected cell.
  it('takes the contract’s words as missing and rejects any other, with the text as it stood', async () => {
    const words = ['', 'NA', 'n/a', '--', 'null', 'NaN', '-'];
    const text = [
      'time,bin,cable,sensor,temperature (degF),moisture (%)',
      ...words.map((word, hour) => `2024-10-05 0${hour}:00,B1,C1,1,${word},15.5`),
      '',
    ].join('\n');
    const { load } = await loadOf({ 'a.csv': text }, [fileOf('grain', 'a.csv')], {});
    expect(load.files[0]).toMatchObject({ cells: 14, kept: 7, missing: 4, rejected: 3 });
    expect(load.rejects.map(({ line, column, text: stood }) => [line, column, stood])).toEqual([
      [6, 'temperature (degF)', 'null'],
      [7, 'temperature (degF)', 'NaN'],
      [8, 'temperature (degF)', '-'],
    ]);
  });
});
