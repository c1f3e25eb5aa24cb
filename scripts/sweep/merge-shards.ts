import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import { jobGroups, type SweepPlan } from '../../src/analysis/strategies/sweep-plan.ts';
import { InputError, type Problem } from '../../src/base/errors.ts';
import { type FoundShard, findShards } from './find-shards.ts';
import { hashOf } from './job-key.ts';
import type { Manifest } from './manifest.ts';
import { rowsOfParquet } from './rows-parquet.ts';
import { shardName } from './sweep-folder.ts';

/**
 * Join shards into the rows of the whole sweep, in its order.
 *
 * @param seasonSha256  of the season's files as they are now
 * @throws              InputError with all that is wrong: shards missing, doubled or broken, jobs doubled or missing, other inputs
 */
export async function mergeShards(
  dirs: readonly string[],
  seasonSha256: string,
): Promise<{ plan: SweepPlan; rows: SweepRow[] }> {
  const problems: Problem[] = [];
  const { found, broken } = findShards(dirs, problems);
  const ofSeason = found.filter(({ manifest }) => manifest.plan.season.sha256 === seasonSha256);
  for (const one of found.filter((other) => !ofSeason.includes(other))) {
    const { title } = one.manifest.plan.season;
    const message = `was made from other files than the season has now (its season is called “${title}”). Run the shard again, or merge where the season is as it was.`;
    problems.push({ code: 'SHARD_INPUTS', file: nameOf(one), message });
  }
  const told = ofSeason.length > 0 ? ofSeason : found;
  const [first] = told;
  if (first === undefined) throw new InputError(problems);
  const { plan } = first.manifest;
  const same = told.filter((one) => {
    const why = otherThan(first.manifest, one.manifest);
    if (why === null) return true;
    const message = `${why} than ${nameOf(first)}. Run one of them again.`;
    problems.push({ code: 'SHARD_INPUTS', file: nameOf(one), message });
    return false;
  });
  // Of shards that are cut in several ways nobody can say which are missing, and one that is there but does not fit is not.
  const misfit = found.filter((one) => !same.includes(one)).map(({ manifest }) => manifest.shard);
  const there = [...broken, ...misfit.map((shard) => `${shardName(shard)}.json`)];
  const { of } = first.manifest.shard;
  const whole = misfit.every((shard) => shard.of === of);
  const rows = new Map<string, SweepRow>();
  for (let index = 1; index <= of; index++) {
    const alike = same.filter(({ manifest }) => manifest.shard.index === index);
    if (alike.length === 0 && whole && !there.includes(`${shardName({ index, of })}.json`)) {
      problems.push({
        code: 'SHARD_MISSING',
        message: `shard ${index}/${of} is in none of the folders. Run it with --shard ${index}/${of}, or name its folder.`,
      });
    }
    if (alike.length > 1) {
      problems.push({
        code: 'SHARD_DOUBLED',
        message: `shard ${index}/${of} is there ${alike.length} times: ${alike.map(nameOf).join(', ')}. Name one of them.`,
      });
    } else for (const one of alike) await addRows(rows, one, problems);
  }
  const ordered = inOrder(plan, rows, problems);
  if (problems.length > 0) throw new InputError(problems);
  return { plan, rows: ordered };
}

const nameOf = ({ dir, manifest }: FoundShard) => join(dir, `${shardName(manifest.shard)}.json`);

/** What parts two shards that should be of one sweep; null where nothing does. */
function otherThan(a: Manifest, b: Manifest): string | null {
  if (hashOf(a.plan.kit) !== hashOf(b.plan.kit))
    return `was made by another version of the kit (${b.plan.kit.version})`;
  if (hashOf(a.plan) !== hashOf(b.plan)) return 'was asked for other bins, years, strategies or variations';
  if (a.shard.of !== b.shard.of) return `is one of ${b.shard.of}, not ${a.shard.of}: cut otherwise`;
  return null;
}

async function addRows(rows: Map<string, SweepRow>, { dir, manifest }: FoundShard, problems: Problem[]): Promise<void> {
  const file = join(dir, manifest.file);
  const tell = (code: string, message: string) => problems.push({ code, file, message });
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) {
    tell('SHARD_ROWS', 'is not there, or is no file. Run the shard again.');
    return;
  }
  const bytes = readFileSync(file);
  if (createHash('sha256').update(bytes).digest('hex') !== manifest.sha256) {
    tell('SHARD_ROWS', 'is not the file that its manifest tells of (sha256). Run the shard again.');
    return;
  }
  const own = await rowsOfParquet(bytes).catch(() => null);
  if (own === null) {
    tell('SHARD_ROWS', 'is no whole Parquet file. Run the shard again.');
    return;
  }
  if (own.length !== manifest.rows || own.length !== manifest.jobs) {
    const { rows: told, jobs } = manifest;
    tell(
      'SHARD_ROWS',
      `has ${own.length} rows; its manifest tells of ${told} rows for ${jobs} jobs. Run the shard again.`,
    );
    return;
  }
  let doubled = 0;
  for (const row of own) {
    const key = keyOf(row);
    if (rows.has(key)) doubled += 1;
    rows.set(key, row);
  }
  if (doubled > 0) tell('SHARD_DOUBLED', `has ${doubled} jobs that another shard has too. Run the shard again.`);
}

function keyOf(row: SweepRow): string {
  return JSON.stringify([row.bin, row.weather, row.airflowFactor, row.fillDays, row.startPoints, row.strategy]);
}

function inOrder(plan: SweepPlan, rows: ReadonlyMap<string, SweepRow>, problems: Problem[]): SweepRow[] {
  let missing = 0;
  const ordered = jobGroups(plan).flatMap(({ bin, weather, variant }) =>
    plan.strategies.flatMap((strategy) => {
      const row = rows.get(keyOf({ bin: plan.bins[bin].id, weather, ...variant, strategy }));
      if (row !== undefined) return [row];
      missing += 1;
      return [];
    }),
  );
  // Rows and jobs of shards that do not fit follow from what is told of them.
  if (problems.length > 0) return ordered;
  const foreign = rows.size - ordered.length;
  if (foreign > 0)
    problems.push({
      code: 'SHARD_ROWS',
      message: `${foreign} rows belong to no job of the plan. Run the shards again.`,
    });
  else if (missing > 0)
    problems.push({
      code: 'SHARD_MISSING',
      message: `${missing} jobs of the plan are in no shard. Run the shards again.`,
    });
  return ordered;
}
