import { reviewSeason } from '../../src/analysis/review-season.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import { InputError } from '../../src/base/errors.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSeason } from '../../src/season/read-season.ts';

export interface WorkedOut {
  loaded: LoadedSeason;
  review: SeasonReview;
}

/**
 * A season folder read, loaded and reviewed; nothing is written.
 *
 * @throws InputError with every problem of the season's files
 */
export async function workOut(folder: string, models: boolean, say: (line: string) => void): Promise<WorkedOut> {
  const season = await readSeason(folder);
  say(`Season   ${season.title}: ${season.bins.length} bin${season.bins.length === 1 ? '' : 's'}`);
  if (season.files.length === 0) {
    const message =
      'lists no file, so there is nothing to report. Add the logs under `files:` (the starter has them as comments).';
    throw new InputError([{ code: 'SEASON_FILES', file: 'season.yaml', message }]);
  }
  const loaded = await loadSeason(season);
  say(`Load     ${loaded.load.files.length} files, ${loaded.load.totals.rows} rows`);
  const review = reviewSeason(loaded, (name) => say(`Analyse  ${name}`), { models });
  return { loaded, review };
}

/** Bins and parts of a season that broke, each a line. */
export function brokenParts({ review }: WorkedOut): string[] {
  return [
    ...(review.failures ?? []),
    ...review.bins.flatMap(({ bin, failure }) => (failure === null ? [] : [`bin ${bin.id}: ${failure}`])),
  ];
}
