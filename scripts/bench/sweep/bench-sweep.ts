import { loadavg } from 'node:os';
import { IN_HINDSIGHT } from '../../../src/analysis/strategies/run-strategy.ts';
import { bareLoop } from './bare-loop.ts';
import { madeFarm } from './made-farm.ts';
import { type TimedSweep, timedSweep } from './timed-sweep.ts';

const MOST_S = 30;
const LEAST_RATIO = 1.8;
/** One and two workers take turns, so that a machine that others use is no faster for one of them; the best round counts. */
const ROUNDS = 3;

/** The kit has nine strategies for any year: four years more make as many runs as ten strategies in thirty. */
const PLAN = { bins: 10, years: 34, days: 120, layers: 20, uneven: true };
const SEARCHED = { bins: 2, years: 4, days: 120, layers: 20, uneven: true, strategies: [IN_HINDSIGHT] };

/** Ten bins, autumns of 120 days, all strategies, 20 layers in three columns: seconds on two workers, and over one. */
export async function benchSweep(): Promise<void> {
  const say = (line: string) => process.stdout.write(`${line}\n`);
  const farm = madeFarm(PLAN);
  const jobs = PLAN.bins * PLAN.years * farm.plan.strategies.length;
  say(
    `sweep: ${PLAN.bins} bins x ${farm.plan.strategies.length} strategies x ${PLAN.years} years of ${PLAN.days} days, ${PLAN.layers} layers in three columns = ${jobs} runs, best of ${ROUNDS} rounds (Node ${process.versions.node}; load ${load()} before)`,
  );
  const two: TimedSweep[] = [];
  const one: TimedSweep[] = [];
  const bare: [two: number, one: number][] = [];
  for (let round = 0; round < ROUNDS; round++) {
    bare.push([await bareLoop(2), await bareLoop(1)]);
    two.push(await timedSweep(farm, 2));
    one.push(await timedSweep(farm, 1));
  }
  const [fastTwo, fastOne] = [best(two), best(one)];
  say(`  2 workers ${said(fastTwo, jobs)}: ${fastTwo.seconds <= MOST_S ? `within ${MOST_S} s` : `OVER ${MOST_S} s`}`);
  say(`  1 worker  ${said(fastOne, jobs)}`);
  const ratio = fastOne.seconds / fastTwo.seconds;
  const verdict = ratio >= LEAST_RATIO ? `at least ${LEAST_RATIO}` : `UNDER ${LEAST_RATIO}`;
  const same = [...two, ...one].every(({ rows }) => JSON.stringify(rows) === JSON.stringify(fastOne.rows));
  say(`  ratio ${ratio.toFixed(2)}: ${verdict}; rows are equal: ${same}`);
  const machine = Math.min(...bare.map(([, alone]) => alone)) / Math.min(...bare.map(([both]) => both));
  say(
    `  the machine itself: a bare loop in two threads ${machine.toFixed(2)} times as fast as in one; rounds ${bare.map(([both, alone], i) => `${(alone / both).toFixed(2)} (sweep ${(one[i].seconds / two[i].seconds).toFixed(2)})`).join(', ')}`,
  );
  const searched = await timedSweep(madeFarm(SEARCHED), 2);
  const searches = SEARCHED.bins * SEARCHED.years;
  say(
    `  in hindsight ${searches} searches in ${searched.seconds.toFixed(1)} s on two workers, ${(searched.cpuS / searches).toFixed(1)} s of processor time each (load ${load()} after)`,
  );
}

const best = (of: readonly TimedSweep[]) => of.reduce((a, b) => (b.seconds < a.seconds ? b : a));

const said = ({ seconds, cpuS }: TimedSweep, jobs: number) =>
  `${seconds.toFixed(1)} s, ${(jobs / seconds).toFixed(0)} jobs/s, ${cpuS.toFixed(1)} s of processor time`;

const load = () => loadavg()[0].toFixed(1);
