import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { IN_HINDSIGHT } from '../../src/analysis/strategies/run-strategy.ts';
import { jobGroups, type SweepPlan, shardGroups } from '../../src/analysis/strategies/sweep-plan.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import { counted } from '../../src/notebook/words.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { binFitter } from '../threads/bin-fitter.ts';
import { workerPool } from '../threads/worker-pool.ts';
import { FinishedJobs } from './finished-jobs.ts';
import { codeHash, hashOf } from './job-key.ts';
import { KeptFits } from './kept-fits.ts';
import { progressBar } from './progress.ts';
import { runJobs } from './run-jobs.ts';
import { seasonBins } from './season-bins.ts';
import { seasonHash } from './season-hash.ts';
import { finishedName, fitsName, shardName } from './sweep-folder.ts';
import type { SweepOptions } from './sweep-options.ts';
import { sweepRunner } from './sweep-runner.ts';
import { writeShard, writeSweep } from './write-sweep.ts';

export interface SweepOutcome {
  /** what was written, to be told */
  written: string;
  /** jobs that broke, each once by what it said */
  failures: string[];
}

/** A season as loaded, and its review where there is one: with models their fits are taken, and none is made. */
export interface SweepSeason {
  loaded: LoadedSeason;
  review: SeasonReview | null;
}

/**
 * Sweep a loaded season's bins through strategies and weather years.
 *
 * @param out  folder to write, which may be replaced
 * @throws     UsageError of years without any weather; then nothing is written
 */
export async function sweepLoaded(
  { loaded, review }: SweepSeason,
  out: string,
  options: SweepOptions,
  say: (line: string) => void,
): Promise<SweepOutcome> {
  const { season } = loaded;
  const { shard, workers } = options;
  const models = new Map((review?.whatIf ?? []).map(({ binId, model }) => [binId, model]));
  const pool = workerPool(workers);
  const fitHere = binFitter(pool, workers);
  const fit: typeof fitHere = async (of, bin) => models.get(bin.bin.id) ?? fitHere(of, bin);
  const bins = (review ?? reviewSeason(loaded)).bins;
  const { planned, binOf, air, by } = seasonBins(loaded, bins, options.bins, options.weathers, say, () => fits(), fit);
  const plan: SweepPlan = {
    format: 1,
    kit: { version: packageJson.version, code: codeHash() },
    season: { title: season.title, sha256: seasonHash(season), currency: season.currency },
    strategies: options.strategies,
    variants: options.variants,
    by: options.by ?? by,
    bins: planned,
  };
  tellYears(plan, options.weathers !== null, say);
  for (const { fromMs, toMs } of air.typical) say(typicalSaid(new Date((fromMs + toMs) / 2).getUTCFullYear()));
  tellSearches(plan, say);
  const part = shard ?? { index: 1, of: 1 };
  mkdirSync(out, { recursive: true });
  const fits = oneOf(() => new KeptFits(join(out, fitsName(shard)), hashOf(plan.kit.code, plan.season.sha256)));
  const finished = new FinishedJobs(join(out, finishedName(shard)));
  const jobs = shardGroups(jobGroups(plan), part).length * plan.strategies.length;
  const bar = progressBar(jobs);
  try {
    const rows = await runJobs(plan, binOf, air, {
      shard: part,
      workers,
      run: sweepRunner(pool),
      finished,
      onDone: bar.done,
    });
    finished.rewrite();
    bar.stop();
    if (shard === null) for (const line of writeSweep(out, plan, rows)) say(line);
    else writeShard(out, plan, shard, rows);
    const broke = rows.filter((row) => String(row.why).startsWith('The run broke'));
    const failures = [...new Set(broke.map((row) => `bin ${row.bin}, ${row.strategy}: ${row.why}`))];
    const name = shard === null ? 'strategies.arrow' : `${shardName(shard)}.json`;
    return { written: `${join(out, name)}: ${rows.length} runs`, failures };
  } finally {
    bar.stop();
    await pool.close();
  }
}

/** Made when it is first asked for. */
function oneOf<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function typicalSaid(year: number): string {
  return `Weather  ${year} is no real year but a typical one, its months from several; a run that begins in it goes on over New Year with its own January`;
}

/** Searches take most of a sweep's time: how many there are at most, before they begin. */
function tellSearches({ strategies, bins, variants }: SweepPlan, say: (line: string) => void): void {
  if (!strategies.includes(IN_HINDSIGHT)) return;
  const searches = variants.length * bins.reduce((sum, { weathers }) => sum + weathers.length, 0);
  say(
    `Search   up to ${searches} best schedules in hindsight, some seconds each on one core; --no-hindsight leaves them out`,
  );
}

/** How many years there are; a season without history says so and what to do, once. */
function tellYears({ bins }: SweepPlan, asked: boolean, say: (line: string) => void): void {
  const years = new Set(bins.flatMap(({ weathers }) => [...weathers]).filter((name) => name !== 'season'));
  if (years.size > 0) say(`Weather  ${counted(years.size, 'year')} beside the season`);
  else if (asked) say('Weather  this season alone, as --years asks');
  else
    say(
      'Weather  this season alone: no other year is on file. Add an archive of past weather to season.yaml under files with role: history.',
    );
}
