import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type MadeFarm, madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { FinishedJobs } from '../../../scripts/sweep/finished-jobs.ts';
import { runJobs } from '../../../scripts/sweep/run-jobs.ts';
import type { Shard } from '../../../scripts/sweep/sweep-folder.ts';
import sweepTask from '../../../scripts/sweep/sweep-task.ts';
import { writeShard, writeSweep } from '../../../scripts/sweep/write-sweep.ts';

/** Two bins, four years, three strategies of which one depends on the price and one on the air. */
export const smallFarm = (): MadeFarm =>
  madeFarm({ bins: 2, years: 4, days: 30, layers: 8, strategies: ['always-on', 'humidity-limit', 'cheap-hours'] });

/** Run a farm's jobs into a folder as the command does. @returns tasks and runs that were worked out, not taken over */
export async function sweepInto(
  dir: string,
  { plan, bins, air }: MadeFarm,
  options: { shard?: Shard; pool?: { run: typeof runTask; workers: number } } = {},
): Promise<{ tasks: number; runs: number }> {
  const { shard, pool = { run: runTask, workers: 1 } } = options;
  const finished = new FinishedJobs(join(dir, 'finished.jsonl'));
  let tasks = 0;
  let runs = 0;
  const rows = await runJobs(plan, (index) => bins[index], air, {
    shard: shard ?? { index: 1, of: 1 },
    workers: pool.workers,
    finished,
    onDone: () => {},
    run: (task) => {
      tasks += 1;
      runs += task.strategies.length;
      return pool.run(task);
    },
  });
  finished.rewrite();
  if (shard === undefined) writeSweep(dir, plan, rows);
  else writeShard(dir, plan, shard, rows);
  return { tasks, runs };
}

const runTask = async (task: Parameters<typeof sweepTask>[0]) => sweepTask(task);

export function bytesOf(dir: string): string[] {
  return ['strategies.arrow', 'sweep.json', 'finished.jsonl'].map((name) =>
    readFileSync(join(dir, name)).toString('base64'),
  );
}
