import { reviewSeason } from '../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { Season } from '../../src/season/season.ts';
import { cacheFolder, keepSeason, readKept } from '../notebook/season-cache.ts';
import { seasonKey } from '../notebook/season-key.ts';

export interface WorkOptions {
  models?: boolean;
  /** take what is kept of the season where no file of it changed since, and keep what is worked out; false */
  keep?: boolean;
  /** told one line a stage */
  onStage: (line: string) => void;
  /** told once the logs are there, before the analysis */
  onLoaded: (loaded: LoadedSeason) => void;
}

/** A season loaded and worked out, or as it was kept: the same numbers, since the kit's own code is part of what it is kept under. */
export async function workedOut(
  season: Season,
  { models = false, keep = false, onStage, onLoaded }: WorkOptions,
): Promise<{ loaded: LoadedSeason; review: SeasonReview }> {
  const key = keep ? seasonKey(season) : '';
  const before = keep ? readKept(cacheFolder(season), key) : null;
  const loaded = before?.loaded ?? (await loadSeason(season));
  onLoaded(loaded);
  // A review without models is not one from which they are left out: their numbers stand on other pages too.
  if (before !== null && (before.review.whatIf !== undefined) === models) {
    onStage('Analyse  as kept: no file changed since');
    return { loaded, review: before.review };
  }
  const review = reviewSeason(loaded, (name) => onStage(`Analyse  ${name}`), { models });
  // What was fitted once stays kept: a run without models takes seconds, one with them minutes.
  if (keep && (before === null || models) && !keepSeason(cacheFolder(season), key, { loaded, review }))
    onStage(`         ${cacheFolder(season)} cannot be written; the next review works it out anew`);
  return { loaded, review };
}
