import type { SeasonReview } from '../../src/analysis/types.ts';
import { InputError } from '../../src/base/errors.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { workedOut } from './worked-out.ts';

export interface Worked {
  loaded: LoadedSeason;
  review: SeasonReview;
}

/**
 * A season folder read, loaded and reviewed, for a report of it; no page is made.
 *
 * @param keep  as `workedOut`
 * @throws      InputError with every problem of the season's files
 */
export async function workOut(
  folder: string,
  { models, keep, say }: { models: boolean; keep: boolean; say: (line: string) => void },
): Promise<Worked> {
  const season = await readSeason(folder);
  say(`Season   ${season.title}: ${season.bins.length} bin${season.bins.length === 1 ? '' : 's'}`);
  if (season.files.length === 0) {
    const message =
      'lists no file, so there is nothing to report. Add the logs under `files:` (the starter has them as comments).';
    throw new InputError([{ code: 'SEASON_FILES', file: 'season.yaml', message }]);
  }
  return workedOut(season, {
    models,
    keep,
    onStage: say,
    onLoaded: ({ load }) => say(`Load     ${load.files.length} files, ${load.totals.rows} rows`),
  });
}

/** Bins and parts of a season that broke, each a line. */
export function brokenParts({ review }: Worked): string[] {
  return [
    ...(review.failures ?? []),
    ...review.bins.flatMap(({ bin, failure }) => (failure === null ? [] : [`bin ${bin.id}: ${failure}`])),
  ];
}
