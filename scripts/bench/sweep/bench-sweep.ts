import { loadavg } from 'node:os';
import { performance } from 'node:perf_hooks';
import type { FinishedRun } from '../../../src/analysis/strategies/run-numbers.ts';
import { runJobs } from '../../sweep/run-jobs.ts';
import { sweepPool } from '../../sweep/sweep-pool.ts';
import { type MadeFarm, madeFarm } from './made-farm.ts';

const MOST_S = 30;
const LEAST_RATIO = 1.8;

/** The kit has nine strategies for any year: four years more make as many runs as ten strategies in thirty. */
const PLAN = { bins: 10, years: 34, days: 120, layers: 20 };

/** Ten bins, autumns of 120 days, all strategies, 20 layers: seconds on two workers, and over one. */
export async function benchSweep(): Promise<void> {
  const say = (line: string) => process.stdout.write(`${line}\n`);
  const farm = madeFarm(PLAN);
  const jobs = PLAN.bins * PLAN.years * farm.plan.strategies.length;
  say(
    `sweep: ${PLAN.bins} bins x ${farm.plan.strategies.length} strategies x ${PLAN.years} years of ${PLAN.days} days, ${PLAN.layers} layers = ${jobs} runs (Node ${process.versions.node}; load ${load()} before)`,
  );
  const two = await timed(farm, 2);
  const one = await timed(farm, 1);
  const seconds = two.seconds;
  say(
    `  2 workers ${two.seconds.toFixed(1)} s, ${(jobs / two.seconds).toFixed(0)} jobs/s, ${two.cpuS.toFixed(1)} s of processor time: ${seconds <= MOST_S ? `within ${MOST_S} s` : `OVER ${MOST_S} s`}`,
  );
  say(
    `  1 worker  ${one.seconds.toFixed(1)} s, ${(jobs / one.seconds).toFixed(0)} jobs/s, ${one.cpuS.toFixed(1)} s of processor time`,
  );
  const ratio = one.seconds / two.seconds;
  say(
    `  ratio ${ratio.toFixed(2)}: ${ratio >= LEAST_RATIO ? `at least ${LEAST_RATIO}` : `UNDER ${LEAST_RATIO}`}; rows are equal: ${JSON.stringify(one.rows) === JSON.stringify(two.rows)} (load ${load()} after)`,
  );
}

async function timed({ plan, bins, air }: MadeFarm, workers: number) {
  const start = performance.now();
  const before = process.cpuUsage();
  const pool = sweepPool(workers);
  const done = new Map<string, FinishedRun>();
  const rows = await runJobs(plan, (index) => bins[index], air, {
    shard: { index: 1, of: 1 },
    workers,
    run: pool.run,
    finished: {
      get: (key) => done.get(key),
      add: (runs) => {
        for (const [key, run] of runs) done.set(key, run);
      },
    },
    onDone: () => {},
  });
  await pool.close();
  // Of all threads: what a busy machine leaves of a core does not weigh on it.
  const { user, system } = process.cpuUsage(before);
  return { rows, seconds: (performance.now() - start) / 1000, cpuS: (user + system) / 1e6 };
}

const load = () => loadavg()[0].toFixed(1);
