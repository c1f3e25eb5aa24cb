import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import dataQuality from '../../notebooks/data-quality.ts';
import fanEnergy from '../../notebooks/fan-energy.ts';
import firstLook from '../../notebooks/first-look.ts';
import fronts from '../../notebooks/fronts.ts';
import moisture from '../../notebooks/moisture.ts';
import overview from '../../notebooks/overview.ts';
import yearEnd from '../../notebooks/year-end.ts';
import { madeBy, unitsOf } from '../../scripts/review/made-by.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-first-sentences-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** One bin's month without the lines of season.yaml that `cut` takes out. @returns each page's answer, by the notebook's id */
async function answers(name: string, cut: readonly RegExp[]): Promise<Record<string, string>> {
  const folder = join(work, name);
  makeSeasonFolder(folder, { ...SMALL_SEASON, hours: 24 * 12 });
  const yaml = join(folder, 'season.yaml');
  const text = readFileSync(yaml, 'utf8');
  writeFileSync(
    yaml,
    cut.reduce((left, part) => left.replace(part, ''), text),
  );
  expect(readFileSync(yaml, 'utf8')).not.toBe(text);
  const loaded = await loadSeason(await readSeason(folder));
  const review = reviewSeason(loaded);
  const input = { loaded, review, units: unitsOf(loaded), made: madeBy(loaded, 'test', 0) };
  const notebooks = [dataQuality, fanEnergy, firstLook, fronts, moisture, overview, yearEnd];
  const pages = await Promise.all(notebooks.map(async (one) => one.page(input)));
  for (const page of pages) for (const { failure } of page.sections) expect(failure ?? null).toBe(null);
  return Object.fromEntries(pages.map(({ id, answer }) => [id, answer]));
}

const RANGE = /\d\s[^();]*\([\d.,−]+ to [\d.,−]+\)/;

describe('the first sentence of each page', () => {
  it('where nothing prices the fans', async () => {
    const said = await answers('no-price', [/tariffs:\n.*\n.*\n/, /, tariff: farm/]);
    const why = 'Fan F1 has no tariff in season.yaml, so its energy has no price.';
    for (const id of ['fan-energy', 'overview', 'year-end']) {
      expect(said[id], id).toMatch(RANGE);
      expect(said[id], id).toContain(why);
    }
    expect(said['first-look']).toMatch(
      /^Bin 1 ran .*\); whether another rule would have done it for less can’t be told\. ./,
    );
    expect(said.moisture).toMatch(RANGE);
    expect(said['data-quality']).toMatch(/\d values; \d.* left out(, most for “[a-z ]+” \([\d,]+\))?, and /);
  });

  it('where no log tells what the fans did', async () => {
    const said = await answers('no-fans', [/ {2}- path: logs\/fans.csv\n.*\n.*\n/]);
    const why = 'No log tells what fan F1 did';
    for (const id of ['fan-energy', 'fronts', 'overview', 'year-end', 'first-look'])
      expect(said[id], id).toMatch(/^Can’t tell/);
    for (const id of ['overview', 'year-end', 'first-look']) expect(said[id], id).toContain(why);
    expect(said.moisture).toMatch(RANGE);
  });

  it('where there is no weather', async () => {
    const said = await answers('no-weather', [/ {2}- \{ path: weather.*\n/]);
    for (const id of ['fan-energy', 'overview', 'year-end', 'moisture']) expect(said[id], id).toMatch(RANGE);
    expect(said.fronts).toMatch(/^Can’t tell .*neither plenum nor weather/);
    expect(said['first-look']).toContain('can’t be told. No weather was logged');
  });
});
