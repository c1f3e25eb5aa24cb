import type { SeasonReview } from '../../src/analysis/types.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { seasonOfFiles } from '../kept/season-of-files.ts';
import { workedOut } from '../kept/worked-out.ts';

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
  const season = await seasonOfFiles(folder);
  say(`Season   ${season.title}: ${season.bins.length} bin${season.bins.length === 1 ? '' : 's'}`);
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
