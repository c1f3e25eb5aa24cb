import { availableParallelism } from 'node:os';
import { workerPool } from '../../threads/worker-pool.ts';
import type { SeedRange } from '../seed-range.ts';
import type { FitCase } from './fit-cases.ts';
import { RANKED } from './try-out.ts';

/** Enough for about 50 bins whose models are trusted and whose strategies part. */
const SEEDS = { from: 9401, to: 9500 };

/**
 * Is the strategy that is called cheapest on a bed as fitted to a season's log the cheapest in truth, in another autumn? For drawn
 * bins the season is played by the generator's finer bed, logged with all errors, fitted; then every strategy is run through the
 * fitted bed and through the finer one in weather that the fit has not seen.
 */
export async function benchFits({ from, to }: SeedRange = SEEDS): Promise<void> {
  const pool = workerPool(Math.min(2, availableParallelism()));
  try {
    const run = pool.job<number, FitCase[]>(new URL('./fit-task.ts', import.meta.url), 'default');
    process.stdout.write(`ranking of fitted beds in another autumn, drawn seasons ${from}-${to}\n`);
    const cases: FitCase[] = [];
    const tell = async (seed: number) => {
      const of = await run(seed);
      for (const one of of) process.stdout.write(`  ${lineOf(one)}\n`);
      cases.push(...of);
    };
    await Promise.all(Array.from({ length: to - from + 1 }, (_, i) => tell(from + i)));
    summary(cases);
  } finally {
    await pool.close();
  }
}

function lineOf({ bin, told, pick, clear, over, cheapest, why }: FitCase): string {
  const points = Number.isNaN(over) ? 'misses its target' : `${(100 * over).toFixed(1)} % above the cheapest`;
  const named =
    pick === null ? '' : `: ${pick}${clear ? '' : ' (may be)'}, ${points}${pick === cheapest ? '' : ` (${cheapest})`}`;
  return `${bin}: ${told}${named}${why === '' ? '' : `. ${why}`}`;
}

function summary(cases: readonly FitCase[]): void {
  const count = (told: FitCase['told']) => cases.filter((one) => one.told === told).length;
  const asked = cases.filter(({ told }) => told === 'right' || told === 'wrong' || told === 'none named');
  const clearly = asked.filter(({ clear }) => clear);
  const rightly = clearly.filter(({ told }) => told === 'right');
  const sumOf = (what: 'held' | 'ranges') => cases.reduce((sum, one) => sum + one[what], 0);
  const byOne = RANKED.map((_, i) => asked.filter(({ rightOnes }) => rightOnes[i]).length);
  const one = Math.max(...byOne);
  process.stdout.write(
    [
      `  told as the cheapest in ${clearly.length} bins, right in ${rightly.length}: it reaches, within 5 % of the truly cheapest`,
      `  with those told as one that may be the cheapest ${count('right')} of ${asked.length} (none named in ${count('none named')})`,
      `  the range of a cost holds the true one in ${sumOf('held')} of ${sumOf('ranges')}`,
      `  ${RANKED[byOne.indexOf(one)].id} named for every bin would be right in ${one}`,
      `  beside them: withheld, as the model is not trusted, ${count('withheld')}; fewer than two strategies truly reach the target ${count('nothing asked')}`,
      '',
    ].join('\n'),
  );
}
