import { join } from 'node:path';
import type { Swept } from '../../src/analysis/strategies/swept.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSweep } from '../sweep/read-sweep.ts';
import { sweepLoaded } from '../sweep/sweep-loaded.ts';
import { sweepOptions } from '../sweep/sweep-options.ts';

/**
 * The sweep that stands beside a season. Where one is wanted and none of these files and this code stands there, it is run: every
 * rule in every year on file, by the beds that the review has fitted, without searches in hindsight, which take minutes.
 */
export async function sweepBeside(
  { loaded, review }: { loaded: LoadedSeason; review: SeasonReview },
  wanted: boolean,
  say: (line: string) => void,
): Promise<{ swept: Swept; failures: string[] }> {
  const { season } = loaded;
  const there = readSweep(season);
  if (wanted && there.summary !== null) say('Sweep    as it stands: of these files, by this code');
  if (!wanted || there.summary !== null || review.whatIf === undefined) return { swept: there, failures: [] };
  say('Sweep    every rule in each year on file');
  const { failures } = await sweepLoaded(
    { loaded, review },
    join(season.folder, 'sweep'),
    sweepOptions({ hindsight: false }),
    say,
  );
  return { swept: readSweep(season), failures: failures.map((one) => `sweep, ${one}`) };
}
