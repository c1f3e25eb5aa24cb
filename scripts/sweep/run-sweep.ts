import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import { IN_HINDSIGHT } from '../../src/analysis/strategies/run-strategy.ts';
import { jobGroups, type SweepPlan, shardGroups } from '../../src/analysis/strategies/sweep-plan.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import type { Season } from '../../src/season/season.ts';
import { didYouMean } from '../../src/season/yaml/nearest.ts';
import { UsageError } from '../command-line.ts';
import { assertReplaceable } from '../folder/replace-folder.ts';
import { binFitter } from '../threads/bin-fitter.ts';
import { workerPool } from '../threads/worker-pool.ts';
import { FinishedJobs } from './finished-jobs.ts';
import { codeHash, hashOf } from './job-key.ts';
import { KeptFits } from './kept-fits.ts';
import { mergeShards } from './merge-shards.ts';
import { progressBar } from './progress.ts';
import { runJobs } from './run-jobs.ts';
import { seasonBins } from './season-bins.ts';
import { seasonHash } from './season-hash.ts';
import { finishedName, fitsName, SWEEP_FOLDER, shardName } from './sweep-folder.ts';
import type { SweepOptions } from './sweep-options.ts';
import { sweepRunner } from './sweep-runner.ts';
import { writeShard, writeSweep } from './write-sweep.ts';

export interface SweepOutcome {
  /** what was written, to be told */
  written: string;
  /** jobs that broke, each once by what it said */
  failures: string[];
}

/**
 * Sweep a season's bins through strategies and weather years.
 *
 * @throws InputError with every problem of the season's files or of what was asked for; then nothing is written
 */
export async function runSweep(
  seasonFolder: string,
  outFolder: string | null,
  options: SweepOptions,
  say: (line: string) => void,
): Promise<SweepOutcome> {
  const folder = resolve(seasonFolder);
  const out = outOf(folder, outFolder);
  await assertReplaceable(out, folder, SWEEP_FOLDER);
  const season = await readSeason(folder);
  assertBins(season, options.bins);
  const loaded = await loadSeason(season);
  say(`Load     ${loaded.load.files.length} files, ${loaded.load.totals.rows} rows`);
  const { shard, workers } = options;
  const pool = workerPool(workers);
  const fit = binFitter(pool, workers);
  const { planned, binOf, air } = seasonBins(loaded, options.bins, options.weathers, say, () => fits(), fit);
  const plan: SweepPlan = {
    format: 1,
    kit: { version: packageJson.version, code: codeHash() },
    season: { title: season.title, sha256: seasonHash(season), currency: season.currency },
    strategies: options.strategies,
    variants: options.variants,
    by: options.by,
    bins: planned,
  };
  tellYears(plan, say);
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

/** Join the shards of a sweep that were run elsewhere. */
export async function mergeSweep(
  seasonFolder: string,
  outFolder: string | null,
  dirs: readonly string[],
): Promise<SweepOutcome> {
  const folder = resolve(seasonFolder);
  const out = outOf(folder, outFolder);
  await assertReplaceable(out, folder, SWEEP_FOLDER);
  const { plan, rows } = await mergeShards(dirs, seasonHash(await readSeason(folder)));
  mkdirSync(out, { recursive: true });
  writeSweep(out, plan, rows);
  return { written: `${join(out, 'strategies.arrow')}: ${rows.length} runs`, failures: [] };
}

function outOf(seasonFolder: string, out: string | null): string {
  return out === null ? join(seasonFolder, 'sweep') : resolve(out);
}

function assertBins({ bins }: Season, asked: readonly string[] | null): void {
  const known = bins.map(({ id }) => id);
  const unknown = (asked ?? []).filter((id) => !known.includes(id));
  if (unknown.length === 0) return;
  throw new UsageError(
    unknown.map((id) => ({
      code: 'SWEEP_OPTION',
      message: `--bins names "${id}"; there are ${known.join(', ')}.${didYouMean(id, known)}`,
    })),
  );
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
function tellYears({ bins }: SweepPlan, say: (line: string) => void): void {
  const years = new Set(bins.flatMap(({ weathers }) => [...weathers]).filter((name) => name !== 'season'));
  if (years.size > 0) say(`Weather  ${years.size} years beside the season`);
  else
    say(
      'Weather  this season alone: no other year is on file. Add an archive of past weather to season.yaml under files with role: history.',
    );
}
