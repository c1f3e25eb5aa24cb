import { resolve } from 'node:path';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSeason } from '../../src/season/read-season.ts';

/** The sample's seasons, by their folders. */
export type Sample = 'sorrel-fork' | 'sorrel-fork-2023';

const loaded = new Map<Sample, Promise<LoadedSeason>>();
const reviewed = new Map<Sample, Promise<SeasonReview>>();

/** A season of the sample as it is loaded, once for all test files of a worker: none may change it. */
export function loadedSample(name: Sample): Promise<LoadedSeason> {
  const found = loaded.get(name) ?? readSeason(resolve('data-samples', name)).then(loadSeason);
  loaded.set(name, found);
  return found;
}

/** Its review, without models. */
export function reviewedSample(name: Sample): Promise<SeasonReview> {
  const found = reviewed.get(name) ?? loadedSample(name).then((season) => reviewSeason(season));
  reviewed.set(name, found);
  return found;
}
