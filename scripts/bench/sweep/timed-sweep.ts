import { performance } from 'node:perf_hooks';
import type { FinishedRun } from '../../../src/analysis/strategies/run-numbers.ts';
import type { SweepRow } from '../../../src/analysis/strategies/sweep-columns.ts';
import { runJobs } from '../../sweep/run-jobs.ts';
import { sweepRunner } from '../../sweep/sweep-runner.ts';
import { workerPool } from '../../threads/worker-pool.ts';
import type { MadeFarm } from './made-farm.ts';

export interface TimedSweep {
  rows: SweepRow[];
  seconds: number;
  /** of all threads: what a busy machine leaves of a core does not weigh on it */
  cpuS: number;
}

/** Sweep a farm, the start of its workers included; nothing is written. */
export async function timedSweep({ plan, bins, air }: MadeFarm, workers: number): Promise<TimedSweep> {
  const start = performance.now();
  const before = process.cpuUsage();
  const pool = workerPool(workers);
  const done = new Map<string, FinishedRun>();
  const rows = await runJobs(plan, (index) => bins[index], air, {
    shard: { index: 1, of: 1 },
    workers,
    run: sweepRunner(pool),
    finished: {
      get: (key) => done.get(key),
      add: (runs) => {
        for (const [key, run] of runs) done.set(key, run);
      },
    },
    onDone: () => {},
  });
  await pool.close();
  const { user, system } = process.cpuUsage(before);
  return { rows, seconds: (performance.now() - start) / 1000, cpuS: (user + system) / 1e6 };
}
