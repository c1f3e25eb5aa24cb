import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
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
    const done = await runReview({ seasonFolder: season, out, generatedAtMs: Date.UTC(2025, 0, 1), onStage: () => {} });
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
});
