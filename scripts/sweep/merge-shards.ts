import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import { jobGroups, type SweepPlan } from '../../src/analysis/strategies/sweep-plan.ts';
import { InputError, type Problem } from '../../src/base/errors.ts';
import { hashOf } from './job-key.ts';
import { MANIFEST_SHAPE, type Manifest } from './manifest.ts';
import { rowsOfParquet } from './rows-parquet.ts';

/** A shard as found. */
interface Found {
  dir: string;
  manifest: Manifest;
}

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
  const found = dirs.flatMap((dir) => manifestsIn(dir, problems));
  const [first] = found;
  if (first === undefined) throw new InputError(problems);
  const { plan, shard } = first.manifest;
  if (plan.season.sha256 !== seasonSha256) {
    problems.push({
      code: 'SHARD_INPUTS',
      file: nameOf(first),
      message: `was made from other files than ${plan.season.title} has now. Run the shards again, or merge where the season is as it was.`,
    });
  }
  for (const one of found.slice(1)) {
    const why = otherThan(first.manifest, one.manifest);
    if (why !== null)
      problems.push({
        code: 'SHARD_INPUTS',
        file: nameOf(one),
        message: `${why} than ${nameOf(first)}. Run one of them again.`,
      });
  }
  const same = found.filter((one) => otherThan(first.manifest, one.manifest) === null);
  for (let index = 1; index <= shard.of; index++) {
    const of = same.filter(({ manifest }) => manifest.shard.index === index);
    if (of.length === 0) {
      problems.push({
        code: 'SHARD_MISSING',
        message: `shard ${index}/${shard.of} is in none of the folders. Run it with --shard ${index}/${shard.of}, or name its folder.`,
      });
    }
    if (of.length > 1) {
      problems.push({
        code: 'SHARD_DOUBLED',
        message: `shard ${index}/${shard.of} is there ${of.length} times: ${of.map(nameOf).join(', ')}. Name one of them.`,
      });
    }
  }
  const rows = new Map<string, SweepRow>();
  for (const one of same) await addRows(rows, one, problems);
  const ordered = inOrder(plan, rows, problems);
  if (problems.length > 0) throw new InputError(problems);
  return { plan, rows: ordered };
}

const nameOf = ({ dir, manifest }: Found) => join(dir, manifest.file.replace(/\.parquet$/, '.json'));

function manifestsIn(dir: string, problems: Problem[]): Found[] {
  const names = existsSync(dir) ? readdirSync(dir).filter((name) => /^shard-\d+-of-\d+\.json$/.test(name)) : [];
  if (names.length === 0) {
    const message = `holds no manifest of a shard (shard-1-of-2.json). Name the --out folder of a sweep with --shard.`;
    problems.push({ code: 'SHARD_MANIFEST', file: dir, message });
  }
  return names.sort().flatMap((name) => {
    let text: unknown = null;
    try {
      text = JSON.parse(readFileSync(join(dir, name), 'utf8'));
    } catch {
      // Told below, as any other text that is no manifest.
    }
    const read = MANIFEST_SHAPE.safeParse(text);
    if (read.success) return [{ dir, manifest: read.data }];
    const message = 'is no manifest of a shard, or is cut short. Run the shard again.';
    problems.push({ code: 'SHARD_MANIFEST', file: join(dir, name), message });
    return [];
  });
}

/** What parts two shards that should be of one sweep; null where nothing does. */
function otherThan(a: Manifest, b: Manifest): string | null {
  if (a.plan.season.sha256 !== b.plan.season.sha256) return 'was made from another season, or its files were others,';
  if (hashOf(a.plan.kit) !== hashOf(b.plan.kit))
    return `was made by another version of the kit (${b.plan.kit.version})`;
  if (hashOf(a.plan) !== hashOf(b.plan)) return 'was asked for other bins, years, strategies or variations';
  if (a.shard.of !== b.shard.of) return `is one of ${b.shard.of}, not ${a.shard.of}: cut otherwise`;
  return null;
}

async function addRows(rows: Map<string, SweepRow>, { dir, manifest }: Found, problems: Problem[]): Promise<void> {
  const file = join(dir, manifest.file);
  const tell = (code: string, message: string) => problems.push({ code, file, message });
  if (!existsSync(file)) {
    tell('SHARD_ROWS', 'is not there. Run the shard again.');
    return;
  }
  const bytes = readFileSync(file);
  if (createHash('sha256').update(bytes).digest('hex') !== manifest.sha256) {
    tell('SHARD_ROWS', 'is not the file that its manifest tells of (sha256). Run the shard again.');
    return;
  }
  const own = await rowsOfParquet(bytes);
  if (own.length !== manifest.rows || own.length !== manifest.jobs) {
    tell('SHARD_ROWS', `has ${own.length} rows for ${manifest.jobs} jobs. Run the shard again.`);
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
  const foreign = rows.size - ordered.length;
  if (foreign > 0)
    problems.push({
      code: 'SHARD_ROWS',
      message: `${foreign} rows belong to no job of the plan. Run the shards again.`,
    });
  // A missing shard says so itself.
  if (missing > 0 && problems.length === 0)
    problems.push({
      code: 'SHARD_MISSING',
      message: `${missing} jobs of the plan are in no shard. Run the shards again.`,
    });
  return ordered;
}
