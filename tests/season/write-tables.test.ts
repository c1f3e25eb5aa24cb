import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { rejectsCsv, writeTables } from '../../src/season/write-tables.ts';
import { fromIpc, numbers } from '../../src/tables/arrow.ts';
import { TABLES } from '../../src/tables/columns.ts';
import { loadOf } from './readers/load-of.ts';
import { fileOf, folderOf } from './readers/season-of.ts';

describe('rejects.csv', () => {
  it('keeps the text as it stood, and no spreadsheet takes it for a formula', () => {
    const text = rejectsCsv([
      { file: 'a.csv', line: 3, column: 'T, "in"', text: '=HYPERLINK("x")', reason: 'is no number' },
      { file: '-b.csv', line: 4, column: null, text: 'two\nlines', reason: 'has no time' },
    ]);
    expect(parse(text)).toEqual([
      ['file', 'line', 'column', 'text', 'reason'],
      ['a.csv', '3', 'T, "in"', '\'=HYPERLINK("x")', 'is no number'],
      ["'-b.csv", '4', '', 'two\nlines', 'has no time'],
    ]);
  });
});

describe('the tables on disk', () => {
  it('come back the same, one file a table, the same bytes twice', async () => {
    const csv = 'time,bin,temperature (degC),humidity (%)\n2024-10-04 13:00,B1,12.5,60\n2024-10-04 14:00,B1,,61\n';
    const { folder, remove } = folderOf({});
    const loaded = await loadOf({ 'p.csv': csv }, [fileOf('plenum', 'p.csv')]);
    writeTables(loaded, join(folder, 'a'));
    writeTables(await loadOf({ 'p.csv': csv }, [fileOf('plenum', 'p.csv')]), join(folder, 'b'));
    expect(readdirSync(join(folder, 'a'))).toEqual(
      Object.keys(TABLES)
        .map((name) => `${name}.arrow`)
        .sort(),
    );
    const bytes = readFileSync(join(folder, 'a/plenum.arrow'));
    expect(readFileSync(join(folder, 'b/plenum.arrow')).equals(bytes)).toBe(true);
    expect([...numbers(fromIpc(bytes), 'temp_c')]).toEqual([12.5, Number.NaN]);
    remove();
  });
});
