import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { runSweep } from '../../scripts/sweep/run-sweep.ts';
import { sweepOptions } from '../../scripts/sweep/sweep-options.ts';
import { InputError } from '../../src/base/errors.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

// The made log is no bin's: its model is not trusted, which the sweep says in its turn.
describe('a review with a sweep', { timeout: 240_000 }, () => {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-sweep-beside-'));
  const folder = join(work, 'season');
  beforeAll(() => void makeSeasonFolder(folder, { ...SMALL_SEASON, cables: 1, hours: 24 * 8 }));
  afterAll(() => rmSync(work, { recursive: true, force: true }));

  async function reviewed(sweep: boolean) {
    const said: string[] = [];
    const onStage = (line: string) => said.push(line);
    const wishes = { seasonFolder: folder, out: null, models: true, keep: true, sweep, generatedAtMs: 0, onStage };
    const { failures } = await runReview(wishes);
    expect(failures).toEqual([]);
    return { said: said.join('\n'), html: readFileSync(join(folder, 'review', 'strategies.html'), 'utf8') };
  }
  const rows = () => readFileSync(join(folder, 'sweep', 'strategies.arrow'));

  it('runs one where none stands, and its page tells of it', async () => {
    expect((await reviewed(false)).html).toContain('No sweep stands beside this season.');
    const { said, html } = await reviewed(true);
    expect(said).toMatch(/^Sweep {4}every rule in each year on file$/m);
    expect(html).not.toContain('No sweep stands beside this season.');
    expect(html).toContain('Can’t tell: the sweep could run no bin.');
  });

  it('takes one of the files as they are as it stands', async () => {
    const before = rows();
    const { said } = await reviewed(true);
    expect(said).toMatch(/^Sweep {4}as it stands/m);
    expect(said).not.toContain('every rule in each year');
    expect(rows().equals(before)).toBe(true);
  });

  it('is the sweep of the command, which takes over what a review kept', async () => {
    const before = rows();
    rmSync(join(folder, 'sweep'), { recursive: true });
    const said: string[] = [];
    const run = () =>
      runSweep(folder, null, sweepOptions({ hindsight: false, workers: '1' }), (line) => said.push(line));
    await run();
    expect(said.join('\n')).toMatch(/^Load .* rows, as kept by a review$/m);
    expect(rows().equals(before)).toBe(true);
    // Read and fitted anew it comes to the same.
    for (const name of ['sweep', '.cache']) rmSync(join(folder, name), { recursive: true });
    said.length = 0;
    await run();
    expect(said.join('\n')).not.toContain('as kept');
    expect(rows().equals(before)).toBe(true);
  });

  it('runs what a narrow one lacks, and loses nothing that it held', async () => {
    const narrow = { strategies: 'always-on,best-in-hindsight', years: 'season', vary: 'airflow', workers: '1' };
    await runSweep(folder, null, sweepOptions(narrow), () => {});
    const plan = () => JSON.parse(readFileSync(join(folder, 'sweep', 'sweep.json'), 'utf8')).plan;
    expect(plan().strategies).toEqual(['always-on', 'best-in-hindsight']);
    const { said } = await reviewed(true);
    expect(said).toMatch(/^Sweep {4}the one that stands here lacks daytime-hours, .* and as-logged/m);
    expect(said).toMatch(/and what the one before held: best-in-hindsight and 5 steps moved$/m);
    expect(plan().strategies).toEqual(sweepOptions({}).strategies);
    expect(plan().variants).toHaveLength(6);
    // Now it is whole.
    expect((await reviewed(true)).said).toMatch(/^Sweep {4}as it stands/m);
  });

  it('keeps the choices of one made by another kit', async () => {
    const path = join(folder, 'sweep', 'sweep.json');
    const told = JSON.parse(readFileSync(path, 'utf8'));
    told.plan.kit.code = 'another';
    writeFileSync(path, JSON.stringify(told));
    const { said } = await reviewed(true);
    expect(said).toMatch(/and what the one before held: best-in-hindsight and 5 steps moved$/m);
    expect(JSON.parse(readFileSync(path, 'utf8')).plan.strategies).toContain('best-in-hindsight');
  });

  it('is refused without models, with one error', () => {
    const args = ['--import', 'tsx', 'scripts/review.ts', folder, '--sweep', '--no-model'];
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr).toContain('--sweep runs by the bins’ models, which --no-model leaves out.');
  });

  it('leaves a folder sweep/ of somebody alone, before any work', async () => {
    writeFileSync(join(folder, 'sweep', 'mine.txt'), 'mine');
    await expect(reviewed(true)).rejects.toThrow(InputError);
    rmSync(join(folder, 'sweep', 'mine.txt'));
  });
});
