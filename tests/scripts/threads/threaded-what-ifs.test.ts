import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { threadedWhatIfs } from '../../../scripts/threads/threaded-what-ifs.ts';
import { workerPool } from '../../../scripts/threads/worker-pool.ts';
import { reviewSeason, reviewSeasonBy } from '../../../src/analysis/review-season.ts';
import type { BinReview, SeasonReview } from '../../../src/analysis/types.ts';
import { whatIfsHere } from '../../../src/analysis/what-if/season-what-if.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

vi.mock('../../../scripts/threads/worker-pool.ts', { spy: true });

const folder = mkdtempSync(join(tmpdir(), 'fanbook-threads-'));
let loaded: LoadedSeason;
let plain: SeasonReview;
beforeAll(async () => {
  makeSeasonFolder(folder, { ...SMALL_SEASON, bins: 3, cables: 1, sensors: 3, hours: 24 * 12 });
  loaded = await loadSeason(await readSeason(folder));
  plain = reviewSeason(loaded);
}, 120_000);
beforeEach(() => void vi.mocked(workerPool).mockClear());
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const threaded = (reviews: readonly BinReview[], cores: number, said: string[] = []) =>
  threadedWhatIfs(loaded, reviews, (line) => said.push(line), cores);

/** Breaks as it is fitted, at once. */
const withHole = (review: BinReview): BinReview => ({ ...review, airflow: undefined as never });

describe('what-ifs on two threads', () => {
  it('come to the same bits as on one, are told in the same order, and break with the same words', async () => {
    const reviews = plain.bins.map((one, i) => (i === 1 ? withHole(one) : one));
    const [here, there]: [string[], string[]] = [[], []];
    const expected = whatIfsHere(loaded, reviews, (line) => here.push(line));
    expect(expected.map((one) => 'broke' in one)).toEqual([false, true, false]);
    expect(await threaded(reviews, 2, there)).toEqual(expected);
    expect(there).toEqual(here);
    expect(workerPool).toHaveBeenCalledWith(2);
  }, 240_000);

  it('start no thread for one bin, or on one core', async () => {
    const holes = plain.bins.map(withHole);
    const broke = expect.objectContaining({ broke: expect.any(String) });
    expect(await threaded([holes[0]], 2)).toEqual([broke]);
    expect(await threaded(holes, 1)).toEqual([broke, broke, broke]);
    expect(workerPool).not.toHaveBeenCalled();
  });

  it('take their places in the review', async () => {
    const review = await reviewSeasonBy(
      (_, reviews) => Promise.resolve(reviews.map(({ bin }) => ({ broke: `planted in ${bin.id}` }))),
      loaded,
    );
    expect(review.failures).toEqual(plain.bins.map(({ bin: { id } }) => `model of bin ${id}: planted in ${id}`));
    expect(review.whatIf).toEqual([]);
  });
});
