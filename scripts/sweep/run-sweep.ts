import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import type { Season } from '../../src/season/season.ts';
import { didYouMean } from '../../src/season/yaml/nearest.ts';
import { assertSeasonFolder } from '../../src/season/yaml/source.ts';
import { UsageError } from '../command-line.ts';
import { assertReplaceable } from '../folder/replace-folder.ts';
import { cacheFolder, readKept } from '../kept/season-cache.ts';
import { seasonKey } from '../kept/season-key.ts';
import { mergeShards } from './merge-shards.ts';
import { seasonHash } from './season-hash.ts';
import { SWEEP_FOLDER } from './sweep-folder.ts';
import { type SweepOutcome, sweepLoaded } from './sweep-loaded.ts';
import type { SweepOptions } from './sweep-options.ts';
import { writeSweep } from './write-sweep.ts';

/**
 * Sweep a season's bins through strategies and weather years. What a review with models kept of the season is taken over.
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
  await assertSeasonFolder(folder);
  await assertReplaceable(out, folder, SWEEP_FOLDER);
  const season = await readSeason(folder);
  assertBins(season, options.bins);
  const kept = readKept(cacheFolder(season), seasonKey(season), true);
  const loaded = kept?.loaded ?? (await loadSeason(season));
  const { files, totals } = loaded.load;
  say(`Load     ${files.length} files, ${totals.rows} rows${kept === null ? '' : ', as kept by a review'}`);
  return sweepLoaded({ loaded, review: kept?.review ?? null }, out, options, say);
}

/** Join the shards of a sweep that were run elsewhere. */
export async function mergeSweep(
  seasonFolder: string,
  outFolder: string | null,
  dirs: readonly string[],
): Promise<SweepOutcome> {
  const folder = resolve(seasonFolder);
  const out = outOf(folder, outFolder);
  await assertSeasonFolder(folder);
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
