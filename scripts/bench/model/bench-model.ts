import type { SeedRange } from '../seed-range.ts';
import { BADNESS } from './made-bad.ts';
import type { ModelCase } from './model-cases.ts';
import { withModelPool } from './model-pool.ts';
import type { ModelTask } from './model-task.ts';

/** Seeds on which the fit was worked out, and others; of each, so many seasons are made bad too. */
const USUAL = [
  { name: 'worked on', from: 3001, to: 3014, bad: 4 },
  { name: 'held out', from: 8201, to: 8214, bad: 4 },
];
/** What the kit's design asks of a trusted fit. */
const FLOW_REL = 0.1;
const END_POINTS = 0.3;
const UNSEEN_K = 1.5;

/**
 * Bins of drawn seasons with a known truth, fitted: how near the fits come, how often they are trusted, and with logs made wrong.
 *
 * @param seeds  all of which are made bad too; left out: the usual ones
 */
export async function benchModel(seeds?: SeedRange): Promise<void> {
  await withModelPool(async (run) => {
    for (const { name, from, to, bad: badSeasons } of seeds === undefined ? USUAL : [asked(seeds)]) {
      const seasons = async (last: number, bad: string | null) => {
        const tasks: ModelTask[] = [];
        for (let seed = from; seed <= last; seed++) tasks.push({ seed, bad });
        return (await Promise.all(tasks.map(run))).flat();
      };
      print(`model, seeds ${name} (${from} to ${to})`, await seasons(to, null));
      for (const { id } of BADNESS) {
        const cases = await seasons(from + badSeasons - 1, id);
        const caught = cases.filter((one) => !one.trusted).length;
        line(`made bad, ${id}: not trusted`, `${caught} of ${cases.length}`);
      }
    }
  });
}

function asked({ from, to }: SeedRange): (typeof USUAL)[number] {
  return { name: 'asked for', from, to, bad: to - from + 1 };
}

function print(title: string, cases: readonly ModelCase[]): void {
  const told = cases.filter((one) => one.trusted);
  process.stdout.write(`${title}: ${cases.length} bins\n`);
  line('good log: trusted', `${told.length} of ${cases.length}`);
  const flows = { of: (one: ModelCase) => one.flowOff, limit: FLOW_REL };
  const withFlow = told.filter((one) => !Number.isNaN(one.flowOff));
  line('of these airflow told', `${withFlow.length} of ${told.length}`);
  line(
    'airflow within 10 %, where told',
    within(withFlow, flows),
    count(withFlow, (one) => one.flowHeld),
  );
  for (const crop of new Set(withFlow.map((one) => one.crop))) {
    line(
      `  of ${crop}`,
      within(
        withFlow.filter((one) => one.crop === crop),
        flows,
      ),
    );
  }
  const ends = { of: (one: ModelCase) => one.endOff, limit: END_POINTS };
  const withEnd = told.filter((one) => !Number.isNaN(one.endOff));
  line('end moisture told', `${withEnd.length} of ${told.length}`);
  line(
    'end moisture within 0.3 point, where told',
    within(withEnd, ends),
    count(withEnd, (one) => one.endHeld),
  );
  for (const weighed of [true, false]) {
    const of = withEnd.filter((one) => one.weighed === weighed);
    line(`  ${weighed ? 'with' : 'without'} scale tickets`, within(of, ends));
  }
  line('unseen temperature within 1.5 K', within(told, { of: (one) => one.unseenK, limit: UNSEEN_K }));
  line('worst of these', `${Math.max(...told.map((one) => one.unseenK)).toFixed(2)} K`);
  line('a fit takes', `${(cases.reduce((sum, one) => sum + one.ms, 0) / cases.length / 1000).toFixed(1)} s`);
  for (const one of cases) if (!one.trusted) process.stdout.write(`  not trusted: ${one.bin}: ${one.why}\n`);
}

function line(what: string, told: string, held?: string): void {
  process.stdout.write(`  ${what.padEnd(46)}${told.padEnd(12)}${held === undefined ? '' : `interval holds ${held}`}\n`);
}

const count = (cases: readonly ModelCase[], is: (one: ModelCase) => boolean) =>
  `${cases.filter(is).length} of ${cases.length}`;
const within = (cases: readonly ModelCase[], { of, limit }: { of: (one: ModelCase) => number; limit: number }) =>
  count(cases, (one) => Math.abs(of(one)) <= limit);
