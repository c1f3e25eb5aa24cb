import { availableParallelism } from 'node:os';
import { workerPool } from '../../threads/worker-pool.ts';
import type { ModelCase } from './model-cases.ts';
import type { ModelTask } from './model-task.ts';

const MOST_WORKERS = 2;

/** Drawn seasons are fitted on one worker a core, two at most. */
export async function withModelPool(use: (run: (task: ModelTask) => Promise<ModelCase[]>) => Promise<void>) {
  const pool = workerPool(Math.min(MOST_WORKERS, availableParallelism()));
  try {
    await use(pool.job(new URL('./model-task.ts', import.meta.url), 'default'));
  } finally {
    await pool.close();
  }
}
