import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keepSeason, readKept } from '../../scripts/kept/season-cache.ts';
import { seasonOfFiles } from '../../scripts/kept/season-of-files.ts';
import { runReview } from '../../scripts/review/run-review.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const KEY = 'a'.repeat(32);

describe('a review from what is kept of a season', () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-kept-'));
  const season = join(work, 'season');
  beforeAll(() => void makeSeasonFolder(season, SMALL_SEASON));
  afterAll(() => rmSync(work, { recursive: true, force: true }));

  async function reviewed(name: string, keep: boolean) {
    const out = join(work, name);
    const said: string[] = [];
    await runReview({ seasonFolder: season, out, keep, generatedAtMs: 0, onStage: (line) => said.push(line) });
    const names = (readdirSync(out, { recursive: true }) as string[]).filter((one) =>
      statSync(join(out, one)).isFile(),
    );
    return { said, files: new Map(names.sort().map((one) => [one, readFileSync(join(out, one)).toString('base64')])) };
  }

  it('has the bytes of one that read and worked out everything', async () => {
    const anew = await reviewed('anew', false);
    expect(readdirSync(season)).not.toContain('.cache');
    const keeping = await reviewed('keeping', true);
    expect(keeping.said.join('\n')).toContain('Analyse  Bin 1');
    const kept = await reviewed('kept', true);
    expect(kept.said.join('\n')).toContain('Analyse  as kept');
    expect(kept.said.join('\n')).not.toContain('Analyse  Bin 1');
    expect(anew.files.size).toBeGreaterThan(20);
    for (const other of [keeping, kept]) {
      expect([...other.files.keys()]).toEqual([...anew.files.keys()]);
      const differ = [...anew.files].filter(([name, bytes]) => other.files.get(name) !== bytes).map(([name]) => name);
      expect(differ).toEqual([]);
    }
  });
  it('with models and without are kept beside each other, each as it was asked for', async () => {
    const loaded = await loadSeason(await seasonOfFiles(season));
    const plain = reviewSeason(loaded);
    const folder = join(work, 'both');
    expect(keepSeason(folder, KEY, false, { loaded, review: plain }, true)).toBe(true);
    expect(readKept(folder, KEY, true)?.review).toBeNull();
    expect(keepSeason(folder, KEY, true, { loaded, review: { ...plain, whatIf: [] } }, false)).toBe(true);
    expect(readKept(folder, KEY, false)?.review?.whatIf).toBeUndefined();
    expect(readKept(folder, KEY, true)?.review?.whatIf).toEqual([]);
    // A season of other files takes the place of both.
    keepSeason(folder, KEY.replaceAll('a', 'b'), false, { loaded, review: plain }, true);
    expect(readKept(folder, KEY, false)).toBeNull();
  });
  it('is worked out anew once a file of the season has changed', async () => {
    appendFileSync(join(season, 'season.yaml'), '# changed\n');
    const after = await reviewed('after', true);
    expect(after.said.join('\n')).toContain('Analyse  Bin 1');
  });
});
