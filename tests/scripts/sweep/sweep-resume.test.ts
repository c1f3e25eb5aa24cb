import { spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sweepRunner } from '../../../scripts/sweep/sweep-runner.ts';
import { workerPool } from '../../../scripts/threads/worker-pool.ts';
import { bytesOf, smallFarm, sweepInto } from './sweep-of.ts';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'sweep-'));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const RUNS = 2 * 4 * 3;
const inner = (name: string) => mkdtempSync(join(dir, name));

describe('a sweep', () => {
  it('writes the same bytes on one worker thread, on two, and without', async () => {
    const [none, one, two] = ['none', 'one', 'two'].map(inner);
    await sweepInto(none, smallFarm());
    for (const [folder, workers] of [
      [one, 1],
      [two, 2],
    ] as const) {
      const pool = workerPool(workers);
      const { runs } = await sweepInto(folder, smallFarm(), { pool: { run: sweepRunner(pool), workers } });
      await pool.close();
      expect(runs).toBe(RUNS);
    }
    expect(bytesOf(one)).toEqual(bytesOf(none));
    expect(bytesOf(two)).toEqual(bytesOf(none));
  });

  it('goes on where it was killed, and comes to the same bytes', async () => {
    const [whole, killed] = ['whole', 'killed'].map(inner);
    await sweepInto(whole, smallFarm());
    const kept = () => {
      const path = join(killed, 'finished.jsonl');
      return existsSync(path) ? readFileSync(path, 'utf8').split('\n').length - 2 : 0;
    };
    const script = fileURLToPath(new URL('./killed-sweep.ts', import.meta.url));
    const child = spawn(process.execPath, ['--import', 'tsx', script, killed], { stdio: 'inherit' });
    const ended = new Promise((resolve) => {
      child.once('exit', (_code, signal) => resolve(signal));
    });
    while (kept() < 6 && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 1));
    child.kill('SIGKILL');
    expect(await ended).toBe('SIGKILL');
    const before = kept();
    expect(before).toBeGreaterThanOrEqual(6);
    expect(before).toBeLessThan(RUNS);
    expect(existsSync(join(killed, 'strategies.arrow'))).toBe(false);
    const { runs } = await sweepInto(killed, smallFarm());
    expect(runs).toBe(RUNS - before);
    expect(bytesOf(killed)).toEqual(bytesOf(whole));
    expect(await sweepInto(killed, smallFarm())).toEqual({ tasks: 0, runs: 0 });
  });

  it('runs anew what a line cut short told', async () => {
    const folder = inner('torn');
    await sweepInto(folder, smallFarm());
    const bytes = bytesOf(folder);
    const path = join(folder, 'finished.jsonl');
    const text = readFileSync(path, 'utf8');
    rmSync(path);
    appendFileSync(path, text.slice(0, -40));
    expect(await sweepInto(folder, smallFarm())).toEqual({ tasks: 1, runs: 1 });
    expect(bytesOf(folder)).toEqual(bytes);
  });

  it('runs anew what hangs on a changed input, and nothing else', async () => {
    const folder = inner('changed');
    await sweepInto(folder, smallFarm());
    // A reading of autumn 2022: one year of both bins.
    const warmer = smallFarm();
    const at = warmer.air.timeMs.indexOf(Date.UTC(2022, 9, 20, 17));
    expect(at).toBeGreaterThan(0);
    warmer.air.tempC[at] += 0.1;
    expect(await sweepInto(folder, warmer)).toEqual({ tasks: 2, runs: 2 * 3 });
    // The price of one bin's power: all its runs.
    const dearer = smallFarm();
    const [bin] = dearer.bins;
    const energy = bin.site.tariff!.energy.map((rule) => ({ ...rule, pricePerKwh: 2 * rule.pricePerKwh }));
    bin.site = { ...bin.site, tariff: { ...bin.site.tariff!, energy } };
    expect(await sweepInto(folder, dearer)).toEqual({ tasks: 4, runs: 4 * 3 });
    // One strategy more.
    const more = smallFarm();
    more.plan = { ...more.plan, strategies: [...more.plan.strategies, 'night-hours'] };
    expect(await sweepInto(folder, more)).toEqual({ tasks: 8, runs: 8 });
    // Other code.
    const other = smallFarm();
    other.plan = { ...other.plan, kit: { version: '0', code: 'other' } };
    expect(await sweepInto(folder, other)).toEqual({ tasks: 8, runs: RUNS });
  });
});
