import { setImmediate } from 'node:timers/promises';
import { binModel } from '../../src/analysis/model/bin-model.ts';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import type { BinTask } from './bin-task.ts';
import { type SeasonBytes, seasonBytes } from './season-bytes.ts';
import type { WorkerPool } from './worker-pool.ts';

/** What fits bins of a season: in a pool's threads, or here where there are not two of either. */
export function binFitter(
  pool: WorkerPool,
  workers: number,
): (loaded: LoadedSeason, review: BinReview) => Promise<BinModel> {
  const run = pool.job<BinTask, BinModel>(new URL('./bin-task.ts', import.meta.url), 'fitBin');
  let season: SeasonBytes | undefined;
  return async (loaded, review) => {
    if (workers < 2 || loaded.season.bins.length < 2) {
      // A fit takes seconds: who presses Ctrl-C is heard before the next.
      await setImmediate();
      return binModel(loaded, review);
    }
    season ??= seasonBytes(loaded);
    return run({ season, review });
  };
}
