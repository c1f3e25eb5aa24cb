import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const TSX = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
const work = mkdtempSync(join(tmpdir(), 'fanbook-bytes-'));

/** Every file of a folder with the hash of its bytes. */
function hashes(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = names.map((entry) => join(entry.parentPath, entry.name)).sort();
  return Object.fromEntries(
    paths.map((path) => [path.slice(folder.length + 1), createHash('sha256').update(readFileSync(path)).digest('hex')]),
  );
}

/** The whole command in an environment of its own, without models, which `review.test.ts` has. @returns its files */
function review(name: string, season: string, cwd: string, env: Record<string, string>): Record<string, string> {
  const out = join(work, name);
  const args = ['--import', TSX, join(ROOT, 'scripts/review.ts'), season, '--no-model', '--xlsx', '--out', out];
  const { SOURCE_DATE_EPOCH: _, ...others } = process.env;
  const done = spawnSync(process.execPath, args, { cwd, env: { ...others, ...env }, encoding: 'utf8' });
  expect(done.status, done.stderr).toBe(0);
  return hashes(out);
}

const EPOCH = { SOURCE_DATE_EPOCH: '1735689600' };

describe('the same season', () => {
  beforeAll(() => {
    // Over the night when the clock goes back, 3 November 2024; one bin more than one, so that there is an order.
    makeSeasonFolder(join(work, 'season'), { ...SMALL_SEASON, bins: 2, hours: 24 * 34 });
    // Another folder, whose files were made in another order, above it.
    mkdirSync(join(work, 'elsewhere', 'season', 'logs'), { recursive: true });
    for (const name of ['fans.csv', 'B2.csv', 'B1.csv']) {
      cpSync(join(work, 'season', 'logs', name), join(work, 'elsewhere', 'season', 'logs', name));
    }
    for (const name of ['weather', 'season.yaml']) {
      cpSync(join(work, 'season', name), join(work, 'elsewhere', 'season', name), { recursive: true });
    }
  });
  afterAll(() => rmSync(work, { recursive: true, force: true }));

  it('gives the same bytes in every file, workbook too, in any time zone, locale and folder', () => {
    const first = review('a', join(work, 'season'), ROOT, { ...EPOCH, TZ: 'UTC', LANG: 'C', LC_ALL: 'C' });
    for (const file of ['season.xlsx', 'index.html', 'summary.json', 'rejects.csv', 'data/readings.arrow']) {
      expect(Object.keys(first)).toContain(file);
    }
    const german = { TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' };
    expect(review('b', 'season', join(work, 'elsewhere'), { ...EPOCH, ...german })).toEqual(first);
    // A zone whose summer time is half an hour, in a language whose i has no dot.
    const turkish = { TZ: 'Australia/Lord_Howe', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };
    const later = review('c', '../season', join(work, 'elsewhere'), turkish);
    // Without SOURCE_DATE_EPOCH pages tell when they were made, and nothing else does.
    const files = (of: Record<string, string>) =>
      Object.fromEntries(Object.entries(of).filter(([name]) => !name.endsWith('.html')));
    expect(files(later)).toEqual(files(first));
  });
});
