import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { loadFolder } from '../../scripts/load/load-folder.ts';
import { openSeason } from '../../scripts/notebook/open-season.ts';
import { runReview } from '../../scripts/review/run-review.ts';
import { mergeSweep, runSweep } from '../../scripts/sweep/run-sweep.ts';
import { sweepOptions } from '../../scripts/sweep/sweep-options.ts';
import { runYearEnd } from '../../scripts/year-end/run-year-end.ts';
import type { YearEndWishes } from '../../scripts/year-end/wishes.ts';

const folder = mkdtempSync(join(tmpdir(), 'fanbook-given-'));
const file = join(folder, 'season.yaml');
writeFileSync(file, 'format: 1\n');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const quiet = () => {};
const wishes = { out: null, summary: null, previous: null, models: false, keep: false, pdf: null } as YearEndWishes;

// The fault is the file given for the folder, not that nothing can be written below a file; the folder is the next step.
it.each([
  ['review', () => runReview({ seasonFolder: file, out: null, generatedAtMs: 0, onStage: quiet })],
  ['load', () => loadFolder(file, null, quiet)],
  ['sweep', () => runSweep(file, null, sweepOptions({}), quiet)],
  ['sweep --merge', () => mergeSweep(file, null, [folder])],
  ['year-end', () => runYearEnd({ seasons: [file], wishes, generatedAtMs: 0, say: quiet })],
  ['year-end of several', () => runYearEnd({ seasons: [file, file], wishes, generatedAtMs: 0, say: quiet })],
  ['notebook', () => openSeason(file, { models: false, say: quiet })],
])('%s given season.yaml for its folder: says so and which folder to give', async (_, command) => {
  const told = `SEASON_FILE ${file} is a file; a season is given by its folder. Give the folder that season.yaml stands in: ${folder}.`;
  await expect(command()).rejects.toMatchObject({ name: 'InputError', message: told });
  expect(readdirSync(folder)).toEqual(['season.yaml']);
});
