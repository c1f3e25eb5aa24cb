import { appendFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { unguarded } from '../../src/base/csv-text.ts';
import { openWorkbook } from '../support/open-workbook.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

// A season whose every free text opens a formula (OWASP, "CSV Injection"): names, notes, file names, cells that cannot be read.
const NAME = '=HYPERLINK("http://x.invalid","North")';
const NOTE = "+cmd|' /C calc'!A0;=1+1";
const FILE = 'logs/-1+1.csv';
const CELLS = ['=1+1', '-9999x', '@SUM(A1)', "'=already", '-1;=2', 'plain'];
const work = mkdtempSync(join(tmpdir(), 'fanbook-safe-'));
const out = join(work, 'out');
const csv = new Map<string, string[][]>();

beforeAll(async () => {
  const season = join(work, 'season');
  // Two bins: the tables of all bins have a row a bin.
  makeSeasonFolder(season, { ...SMALL_SEASON, bins: 2 });
  renameSync(join(season, 'logs/fans.csv'), join(season, FILE));
  const rows = CELLS.map((cell, minute) => `2024-10-20T12:0${minute}Z,B1,C1,1,"${cell}",15\n`);
  appendFileSync(join(season, 'logs/B1.csv'), rows.join(''));
  const yaml = join(season, 'season.yaml');
  const text = readFileSync(yaml, 'utf8')
    .replace('season: Made for a test', 'season: "@SUM(A1)"')
    .replace('name: Bin 1', `name: '${NAME}'\n    managed_as: "${NOTE}"`)
    .replace('path: logs/fans.csv', `path: ${FILE}`);
  writeFileSync(yaml, text);
  const done = await runReview({ seasonFolder: season, out, workbook: true, generatedAtMs: 0, onStage: () => {} });
  expect(done.failures).toEqual([]);
  csv.set('rejects', parse(readFileSync(join(out, 'rejects.csv'), 'utf8')));
  for (const name of readdirSync(join(out, 'tables'))) {
    csv.set(name, parse(readFileSync(join(out, 'tables', name), 'utf8')));
  }
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('tables of a season full of formulas', () => {
  it('open none in CSV: what begins with a sign is a number, also where a spreadsheet parts cells at semicolons', () => {
    let signs = 0;
    for (const [name, rows] of csv) {
      for (const row of rows) {
        for (const cell of row.flatMap((text) => [text, ...text.split(/[;\t\r\n]/)])) {
          if (!/^\s*[=+\-@\t\r]/.test(cell)) continue;
          signs += 1;
          expect(cell, name).toMatch(/^-\d+(\.\d+)?$/);
        }
      }
    }
    expect(signs).toBeGreaterThan(10);
  });

  it('keep every name as it was given, an apostrophe taken off', () => {
    expect(csv.get('overview-bins-bins.csv')?.[1][0]).toBe(`'${NAME}`);
    expect(csv.get('data-quality-files-files.csv')?.map((row) => unguarded(row[0]))).toContain(FILE);
    const said = [...csv.values()].flat(2).map(unguarded);
    expect(said).toContain(NOTE);
  });

  it('keep rejected cells as they stood', () => {
    const [header, ...rows] = csv.get('rejects') ?? [];
    expect(header).toEqual(['file', 'line', 'column', 'text', 'reason']);
    expect(rows.map((row) => unguarded(row[3]))).toEqual(CELLS);
    expect(rows.map((row) => row[3])).toEqual(["'=1+1", "'-9999x", "'@SUM(A1)", "''=already", "'-1;'=2", 'plain']);
  });

  it('hold no formula in the workbook, and the names as texts', () => {
    const { parts, sheets } = openWorkbook(readFileSync(join(out, 'season.xlsx')));
    for (const [name, xml] of parts) expect(xml.getElementsByTagName('f').length, name).toBe(0);
    const texts = sheets.flatMap((sheet) => [...sheet.cells.values()]).filter(({ value }) => typeof value === 'string');
    for (const text of [NAME, NOTE, FILE]) {
      const found = texts.filter(({ value }) => value === text);
      expect(found.length, text).toBeGreaterThan(0);
    }
    const [name] = texts.filter(({ value }) => value === NAME);
    expect(name.quotePrefix).toBe(true);
  });
});
