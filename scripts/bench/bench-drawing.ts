import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { gunzipSync } from 'node:zlib';
import { parse } from 'csv-parse/sync';
import { openSeason } from '../notebook/open-season.ts';
import { runReview } from '../review/run-review.ts';

const SAMPLE = 'data-samples/sorrel-fork';
const LOGS = ['logs/cables-lane.csv.gz', 'logs/fans-lane.csv.gz'];

/** The sample's whole review from the season as it is kept, nothing read or fitted anew, beside the bare parsing of two of its logs. */
export async function benchDrawing(): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-bench-'));
  try {
    const season = join(work, 'season');
    cpSync(SAMPLE, season, {
      recursive: true,
      filter: (path) => !/\/(review|sweep|pages|year-end|\.cache)$/.test(path),
    });
    await openSeason(season, { models: true, say: () => {} });
    const review = {
      seasonFolder: season,
      out: join(work, 'out'),
      models: true,
      keep: true,
      generatedAtMs: 0,
      onStage: () => {},
    };
    const start = performance.now();
    await runReview(review);
    const drawMs = performance.now() - start;
    const parseStart = performance.now();
    for (const log of LOGS) parse(gunzipSync(readFileSync(join(season, log))), { relax_column_count: true });
    const parseMs = performance.now() - parseStart;
    const seconds = (ms: number) => (ms / 1000).toFixed(2);
    process.stdout.write(
      `drawing: the sample’s review from the kept season ${seconds(drawMs)} s (limit 5 on a quiet machine); ` +
        `bare CSV parse of its two largest logs ${seconds(parseMs)} s; ratio ${(drawMs / parseMs).toFixed(1)}\n`,
    );
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}
