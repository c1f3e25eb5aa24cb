import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BADNESS } from './made-bad.ts';
import { type ModelCase, modelCases } from './model-cases.ts';

/** Seeds on which the fit was worked out, and others. */
const SEEDS = { 'worked on': [3001, 3014], 'held out': [7101, 7114] } as const;
const BAD_SEASONS = 5;

/** Bins of drawn seasons with a known truth, fitted: how near the fits come, how often they are trusted, and with logs made wrong. */
export async function benchModel(): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-model-'));
  try {
    for (const [name, [from, to]] of Object.entries(SEEDS)) {
      const good: ModelCase[] = [];
      for (let seed = from; seed <= to; seed++) good.push(...(await modelCases(seed, work)));
      print(`model, seeds ${name} (${from} to ${to})`, good);
      for (const bad of BADNESS) {
        const cases: ModelCase[] = [];
        for (let seed = from; seed < from + BAD_SEASONS; seed++) cases.push(...(await modelCases(seed, work, bad)));
        const caught = cases.filter((one) => !one.trusted).length;
        process.stdout.write(`  ${bad.id}: ${caught} of ${cases.length} not trusted\n`);
      }
    }
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

function print(title: string, cases: readonly ModelCase[]): void {
  const told = cases.filter((one) => one.trusted);
  const lines = [
    `${title}: ${cases.length} bins, ${told.length} trusted`,
    `  airflow within 10 %: ${within(told, (one) => one.flowOff, 0.1)}; its 90 % interval holds the truth: ${count(told, (one) => one.flowHeld)}; mean ${(100 * mean(told.map((one) => one.flowOff))).toFixed(1)} %`,
    `  moisture at the end within 0.3 point: ${within(told, (one) => one.endOff, 0.3)}; interval holds: ${count(told, (one) => one.endHeld)}`,
    `  temperature on the unseen part within 1.5 K: ${within(told, (one) => one.unseenK, 1.5)}; worst ${Math.max(...told.map((one) => one.unseenK)).toFixed(2)} K`,
    `  a fit takes ${(mean(cases.map((one) => one.ms)) / 1000).toFixed(1)} s`,
    ...cases.filter((one) => !one.trusted).map((one) => `  not trusted: ${one.bin}: ${one.why}`),
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
const count = (cases: readonly ModelCase[], is: (one: ModelCase) => boolean) =>
  `${cases.filter(is).length} of ${cases.length}`;
const within = (cases: readonly ModelCase[], of: (one: ModelCase) => number, limit: number) =>
  count(cases, (one) => Math.abs(of(one)) <= limit);
