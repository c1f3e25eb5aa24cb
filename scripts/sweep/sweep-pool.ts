import { Tinypool } from 'tinypool';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { SweepTask } from './sweep-task.ts';

export interface SweepPool {
  run: (task: SweepTask) => Promise<FinishedRun[]>;
  close: () => Promise<void>;
}

/** Worker threads that run tasks. @param workers  1 or more */
export function sweepPool(workers: number): SweepPool {
  const pool = new Tinypool({
    filename: new URL('./sweep-worker.mjs', import.meta.url).href,
    minThreads: workers,
    maxThreads: workers,
    // The parent's own flags would have each worker load the loader of commands too.
    execArgv: [],
  });
  return { run: (task) => pool.run(task), close: () => pool.destroy() };
}
