import { availableParallelism } from 'node:os';
import { LEAST_FAN_H } from '../../src/analysis/model/bin-model.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { type WhatIfTold, whatIfLine, whatIfsHere } from '../../src/analysis/what-if/season-what-if.ts';
import { errorText } from '../../src/base/error-text.ts';
import { InputError } from '../../src/base/errors.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { BinTask } from './bin-task.ts';
import { inTurn } from './in-turn.ts';
import { seasonBytes } from './season-bytes.ts';
import { workerPool } from './worker-pool.ts';

/**
 * The what-ifs of a season's bins on worker threads, one a core; where not two bins have something to fit, or there is one core, here.
 * The same to the last bit as in one thread, and what `onBin` is told in the same order.
 */
export async function threadedWhatIfs(
  loaded: LoadedSeason,
  reviews: readonly BinReview[],
  onBin: (line: string) => void,
  cores = availableParallelism(),
): Promise<readonly WhatIfTold[]> {
  const fits = reviews.filter(({ fan }) => Number(fan.hours.value) >= LEAST_FAN_H).length;
  const workers = Math.min(cores, fits);
  if (workers < 2) return whatIfsHere(loaded, reviews, onBin);
  const pool = workerPool(workers);
  try {
    const run = pool.job<BinTask, WhatIfTold>(new URL('./bin-task.ts', import.meta.url), 'whatIfOfBin');
    const season = seasonBytes(loaded);
    const told: WhatIfTold[] = new Array(reviews.length);
    await inTurn(reviews, workers, async (place, review) => {
      onBin(whatIfLine(review));
      told[place] = await run({ season, review }).catch((error: unknown): WhatIfTold => {
        // No bin's own: a disk that takes no working file stops them all.
        if (error instanceof InputError) throw error;
        return { broke: errorText(error) };
      });
    });
    return told;
  } finally {
    await pool.close();
  }
}
