import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { parse } from 'csv-parse/sync';
import { makeSeasonFolder } from '../../tests/support/season-folder.ts';
import { runReview } from '../review/run-review.ts';

/** A season of 3 bins and 250,000 readings through the whole review, beside the bare parsing of the same files. */
export async function benchReview(): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-bench-'));
  try {
    const season = join(work, 'season');
    makeSeasonFolder(season, {
      bins: 3,
      cables: 4,
      sensors: 6,
      hours: 3480,
      startMs: Date.UTC(2024, 8, 20),
      isdLite: null,
    });
    const parseStart = performance.now();
    let cells = 0;
    for (const name of readdirSync(join(season, 'logs'))) {
      const rows = parse(readFileSync(join(season, 'logs', name))) as string[][];
      cells += rows.length * rows[0].length;
    }
    const parseMs = performance.now() - parseStart;
    const start = performance.now();
    await runReview({ seasonFolder: season, out: join(work, 'out'), generatedAtMs: 0, onStage: () => {} });
    const reviewMs = performance.now() - start;
    const seconds = (ms: number) => (ms / 1000).toFixed(2);
    process.stdout.write(
      `review: 3 bins, ${3 * 24 * 3480} readings, ${cells} cells: ${seconds(reviewMs)} s; ` +
        `bare CSV parse of the same files ${seconds(parseMs)} s; ratio ${(reviewMs / parseMs).toFixed(1)}\n`,
    );
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}
