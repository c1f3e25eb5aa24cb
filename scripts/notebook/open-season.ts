import { resolve } from 'node:path';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { InputError } from '../../src/base/errors.ts';
import type { BedStore } from '../../src/notebook/form/try-ways.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { bedStore, cacheFolder, type KeptSeason, keepSeason, readKept } from './season-cache.ts';
import { seasonKey } from './season-key.ts';

export interface OpenSeason extends KeptSeason {
  beds: BedStore;
  /** whether it came from what was kept */
  kept: boolean;
}

export interface OpenOptions {
  /** with the bins' models and other ways to run them; some seconds a bin */
  models: boolean;
  /** told one line a stage */
  say(line: string): void;
}

/**
 * A season loaded and worked out: from what is kept of it where no file changed since, else anew, and then kept.
 *
 * @throws InputError with every problem of the season's files
 */
export async function openSeason(folder: string, { models, say }: OpenOptions): Promise<OpenSeason> {
  const season = await readSeason(resolve(folder));
  if (season.files.length === 0) {
    const message =
      'lists no file, so there is nothing to look at. Add the logs under `files:` (the starter has them as comments).';
    throw new InputError([{ code: 'SEASON_FILES', file: 'season.yaml', message }]);
  }
  const key = seasonKey(season);
  const cache = cacheFolder(season);
  const beds = bedStore(cache, key);
  const before = readKept(cache, key);
  if (before !== null && (!models || before.review.whatIf !== undefined)) {
    say(`Season   ${season.title}, as kept: no file changed since`);
    return { ...before, beds, kept: true };
  }
  say(`Season   ${season.title}`);
  const loaded = before?.loaded ?? (await loadSeason(season));
  const review = reviewSeason(loaded, (name) => say(`Analyse  ${name}`), { models });
  if (!keepSeason(cache, key, { loaded, review })) say(`         ${cache} cannot be written; the next run loads anew`);
  return { loaded, review, beds, kept: false };
}
