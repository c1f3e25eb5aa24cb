import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import { jobGroups, type SweepPlan, shardGroups } from '../../src/analysis/strategies/sweep-plan.ts';
import { sweepSummary } from '../../src/analysis/strategies/sweep-summary.ts';
import type { Manifest } from './manifest.ts';
import { rowsArrow } from './rows-arrow.ts';
import { rowsParquet } from './rows-parquet.ts';
import { type Shard, shardName } from './sweep-folder.ts';
import { writeTogether } from './whole-file.ts';

/** Write a whole sweep: every row, and what they say together. @returns what could not be run, a line each */
export function writeSweep(out: string, plan: SweepPlan, rows: readonly SweepRow[]): string[] {
  const summary = sweepSummary(plan, rows);
  writeTogether([
    [join(out, 'strategies.arrow'), rowsArrow(rows)],
    [join(out, 'sweep.json'), jsonText(summary)],
  ]);
  return summary.leftOut.map(
    ({ bin, weather, why }) => `Left out ${bin}${weather === 'all' ? '' : ` in ${weather}`}: ${why}`,
  );
}

/** Write a shard: its rows, then the manifest, which says that they are whole. */
export function writeShard(out: string, plan: SweepPlan, shard: Shard, rows: readonly SweepRow[]): void {
  const name = shardName(shard);
  const bytes = rowsParquet(rows);
  const manifest: Manifest = {
    format: 1,
    shard,
    jobs: shardGroups(jobGroups(plan), shard).length * plan.strategies.length,
    rows: rows.length,
    file: `${name}.parquet`,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    plan,
  };
  writeTogether([
    [join(out, manifest.file), bytes],
    [join(out, `${name}.json`), jsonText(manifest)],
  ]);
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
