import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { openWorkbook } from '../support/open-workbook.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const BINS = 50;
const DAYS = 60;

// Only the logs are made up; reading, analysis and drawing are those of every review. Sixty days keep the test short: a page of
// fifty bins over 200 days weighs at most 2.2 MB (measured by hand), as single bins stand on pages of ten.
describe('a season of fifty bins', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-fifty-'));
  const out = join(work, 'out');
  beforeAll(async () => {
    const season = join(work, 'season');
    makeSeasonFolder(season, { ...SMALL_SEASON, bins: BINS, sensors: 3, hours: 24 * DAYS });
    const generatedAtMs = Date.UTC(2025, 0, 1);
    const done = await runReview({ seasonFolder: season, out, workbook: true, generatedAtMs, onStage: () => {} });
    expect(done.failures).toEqual([]);
  });
  afterAll(() => rmSync(work, { recursive: true, force: true }));
  const pages = () => readdirSync(out).filter((name) => name.endsWith('.html'));

  it('keeps every page under 3 MB', () => {
    const heavy = pages().filter((name) => statSync(join(out, name)).size >= 3_000_000);
    expect(heavy).toEqual([]);
  });
  it('puts single bins on pages of their own, and lists them', () => {
    for (const stem of ['fan-energy', 'moisture', 'fronts']) {
      expect(pages().filter((name) => name.startsWith(`${stem}-bins-`))).toHaveLength(5);
      const main = readFileSync(join(out, `${stem}.html`), 'utf8');
      for (const n of [1, 25, BINS]) expect(main, stem).toContain(`.html#bin-b${n}">Bin ${n}</a>`);
    }
  });
  it('draws no figure taller than a sheet takes', () => {
    // As in the test of figures in parts: Letter, 900 px scaled to 703, less caption and legend.
    const most = (920 - 110) * (900 / 703);
    const tall = pages().flatMap((name) =>
      [...readFileSync(join(out, name), 'utf8').matchAll(/<div class="at-wide"[^>]*><svg[^>]*viewBox="0 0 900 (\d+)/g)]
        .filter(([, height]) => Number(height) > most)
        .map(([, height]) => `${name}: ${height}`),
    );
    expect(tall).toEqual([]);
  });
  it('has a workbook that opens, under 2 MB, whose index leads to every table, its page and its CSV', () => {
    const file = readFileSync(join(out, 'season.xlsx'));
    expect(file.length).toBeLessThan(2_000_000);
    const [index, ...sheets] = openWorkbook(file).sheets;
    const tables = readdirSync(join(out, 'tables'));
    expect(tables.length).toBeGreaterThan(10 * BINS);
    expect(
      index.rows
        .slice(2)
        .map((row) => row[6]?.value)
        .sort(),
    ).toEqual(tables.sort());
    expect(index.rows.slice(2).map((row) => row[0]?.value)).toEqual(sheets.map(({ name }) => name));
    const texts = new Map(pages().map((name) => [name, readFileSync(join(out, name), 'utf8')]));
    index.rows.slice(2).forEach((row, at) => {
      const [page, id] = (index.links.get(`B${at + 3}`) ?? '').split('#');
      expect(texts.get(page)?.includes(`<table id="${id}"`), `${page}#${id}`).toBe(true);
      expect(sheets[at].rows.length - 2).toBe(Number(row[4]?.value) + (row[5]?.value === 'last row' ? 1 : 0));
    });
  });
});
