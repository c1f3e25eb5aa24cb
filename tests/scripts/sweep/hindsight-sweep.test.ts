import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { rowsOfArrow } from '../../../scripts/sweep/rows-arrow.ts';
import { sweepRunner } from '../../../scripts/sweep/sweep-runner.ts';
import { workerPool } from '../../../scripts/threads/worker-pool.ts';
import { bytesOf, sweepInto } from './sweep-of.ts';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'hindsight-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

/** One bin to be cooled, with a heater, in two years: two tasks, so that two workers both have one. */
function farm() {
  const made = madeFarm({
    ...{ bins: 1, years: 2, days: 20, layers: 6 },
    strategies: ['always-on', 'night-hours', 'best-in-hindsight'],
  });
  const [bin] = made.bins;
  return { ...made, bins: [{ ...bin, spec: { ...bin.spec!, goal: 'cool' as const, targetC: 8 } }] };
}

describe('a sweep with the best in hindsight', { timeout: 120_000 }, () => {
  it('writes the same bytes on one worker thread and on two, no strategy that reaches cheaper', async () => {
    const folders = [1, 2].map((workers) => ({ workers, folder: mkdtempSync(join(dir, `w${workers}-`)) }));
    for (const { workers, folder } of folders) {
      const pool = workerPool(workers);
      const done = await sweepInto(folder, farm(), { pool: { run: sweepRunner(pool), workers } });
      await pool.close();
      expect(done).toEqual({ tasks: 2, runs: 6 });
    }
    const [one, two] = folders.map(({ folder }) => bytesOf(folder));
    expect(two).toEqual(one);
    const rows = rowsOfArrow(readFileSync(join(folders[0].folder, 'strategies.arrow')));
    const best = rows.filter(({ strategy }) => strategy === 'best-in-hindsight');
    expect(best.map(({ reachedTarget }) => reachedTarget)).toEqual([true, true]);
    const others = rows.filter((row) => row.strategy !== 'best-in-hindsight' && row.reachedTarget);
    expect(others.length).toBeGreaterThan(1);
    for (const { weather, cost } of others) {
      expect(Number(best.find((row) => row.weather === weather)?.cost)).toBeLessThan(Number(cost));
    }
  });
});
