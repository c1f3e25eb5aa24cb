import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { binLog } from '../../../src/analysis/model/bin-log.ts';
import { binModel } from '../../../src/analysis/model/bin-model.ts';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'fan-without-log-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** @param edit  of season.yaml, as a text */
async function loadedWith(edit: (yaml: string) => string) {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 1 });
  const path = join(folder, 'season.yaml');
  writeFileSync(path, edit(readFileSync(path, 'utf8')));
  const loaded = await loadSeason(await readSeason(folder));
  return { loaded, review: reviewSeason(loaded).bins[0] };
}

it('a bin of which one fan has no log is not fitted, with that reason, as its water by air is withheld', async () => {
  const second =
    '  - { id: F2, nameplate: 15 hp, supply: { phases: 3, volts: 230, power_factor: 0.85 }, tariff: farm }';
  const twin = (yaml: string) =>
    yaml.replace('fans: [F1]', 'fans: [F1, F2]').replace('\nfiles:', `\n${second}\nfiles:`);
  const { loaded, review } = await loadedWith(twin);
  expect(review.bin.fanIds).toEqual(['F1', 'F2']);
  const model = binModel(loaded, review);
  expect(model).toMatchObject({ trusted: false, fitted: null });
  expect(model.why).toMatch(/^No log tells what fan F2 did, so nobody knows in which hours/);
  expect(model.flowM3S.why).toBe(model.why);
  expect(review.water.byAir.why).toMatch(/^No log tells what fan F2 did/);
});

it('a bin without any log of its fan is not told as one whose fan stood still', async () => {
  const { loaded, review } = await loadedWith((yaml) => yaml.replace(/^ *- path: logs\/fans\.csv\n(?: {4}.*\n)*/m, ''));
  expect(binModel(loaded, review).why).toBe('No log tells when the fans of Bin 1 ran.');
});

it('with both logs the same bin can be driven by them', async () => {
  const { loaded, review } = await loadedWith((yaml) => yaml);
  expect(typeof binLog(loaded, review)).toBe('object');
});
