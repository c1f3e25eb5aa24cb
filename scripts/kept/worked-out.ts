import { reviewSeason, reviewSeasonBy } from '../../src/analysis/review-season.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { Season } from '../../src/season/season.ts';
import { threadedWhatIfs } from '../threads/threaded-what-ifs.ts';
import { cacheFolder, type KeptSeason, keepSeason, readKept } from './season-cache.ts';
import { seasonKey } from './season-key.ts';

export interface WorkOptions {
  /** fit the bins' beds and run them in other ways; false */
  models?: boolean;
  /** take what is kept of the season where no file of it changed since, and keep what is worked out; false */
  keep?: boolean;
  /** told one line a stage */
  onStage: (line: string) => void;
  /** told once the logs are there, before the analysis */
  onLoaded?: (loaded: LoadedSeason) => void;
}

export interface WorkedOut extends KeptSeason {
  /** under which it is kept; null where it was not to be */
  key: string | null;
}

/** A season loaded and worked out, or as it was kept: the same numbers, since the kit's own code is part of what it is kept under. */
export async function workedOut(
  season: Season,
  { models = false, keep = false, onStage, onLoaded = () => {} }: WorkOptions,
): Promise<WorkedOut> {
  const folder = cacheFolder(season);
  const key = keep ? seasonKey(season) : null;
  const before = key === null ? null : readKept(folder, key, models);
  const loaded = before?.loaded ?? (await loadSeason(season));
  onLoaded(loaded);
  if (before !== null && before.review !== null) {
    onStage('Analyse  as kept: no file changed since');
    return { loaded, review: before.review, key };
  }
  const onBin = (name: string) => onStage(`Analyse  ${name}`);
  const review = models ? await reviewSeasonBy(threadedWhatIfs, loaded, onBin) : reviewSeason(loaded, onBin);
  if (key !== null && !keepSeason(folder, key, models, { loaded, review }, before === null))
    onStage(`         ${folder} cannot be written; the next run works the season out anew`);
  return { loaded, review, key };
}
