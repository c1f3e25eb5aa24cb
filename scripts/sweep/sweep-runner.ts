import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { WorkerPool } from '../threads/worker-pool.ts';
import type { SweepTask } from './sweep-task.ts';

/** What runs a sweep's tasks in the threads of a pool. */
export function sweepRunner(pool: WorkerPool): (task: SweepTask) => Promise<FinishedRun[]> {
  return pool.job(new URL('./sweep-task.ts', import.meta.url), 'default');
}
