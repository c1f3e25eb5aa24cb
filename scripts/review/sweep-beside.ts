import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Swept } from '../../src/analysis/strategies/swept.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { readSweep } from '../sweep/read-sweep.ts';
import { sweepLoaded } from '../sweep/sweep-loaded.ts';
import { dueBins, keptSaid, lackOf, optionsKeeping, planBeside } from './sweep-due.ts';

/**
 * The sweep that stands beside a season. Where one is wanted and none of these files and this code stands there whole, it is run:
 * every rule for every bin in every year on file, by the beds that the review has fitted. Searches in hindsight, which take
 * minutes, and whatever else the sweep before held are run again where it held them, and only there.
 */
export async function sweepBeside(
  { loaded, review }: { loaded: LoadedSeason; review: SeasonReview },
  wanted: boolean,
  say: (line: string) => void,
): Promise<{ swept: Swept; failures: string[] }> {
  const { season } = loaded;
  const there = readSweep(season);
  const beside = join(season.folder, 'sweep');
  if (!wanted) {
    if (there.why !== null && existsSync(beside)) say(`Sweep    left out: ${there.why}`);
    return { swept: there, failures: [] };
  }
  if (review.whatIf === undefined) {
    say('Sweep    not run: it goes by the bins’ models, and there are none');
    return { swept: there, failures: [] };
  }
  const lack = there.summary === null ? null : lackOf(there.summary.plan, dueBins(loaded, review));
  if (there.summary !== null && lack === null) {
    say('Sweep    as it stands: of these files, by this code');
    return { swept: there, failures: [] };
  }
  if (lack !== null) say(`Sweep    the one that stands here lacks ${lack}`);
  const options = optionsKeeping(planBeside(season));
  const kept = keptSaid(options);
  say(`Sweep    every rule in each year on file${kept === null ? '' : `, and what the one before held: ${kept}`}`);
  const { failures } = await sweepLoaded({ loaded, review }, beside, options, say);
  return { swept: readSweep(season), failures: failures.map((one) => `sweep, ${one}`) };
}
