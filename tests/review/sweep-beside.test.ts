import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import { runSweep } from '../../scripts/sweep/run-sweep.ts';
import { sweepOptions } from '../../scripts/sweep/sweep-options.ts';
import { InputError } from '../../src/base/errors.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

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

  it('leaves a folder sweep/ of somebody alone, before any work', async () => {
    writeFileSync(join(folder, 'sweep', 'mine.txt'), 'mine');
    await expect(reviewed(true)).rejects.toThrow(InputError);
    rmSync(join(folder, 'sweep', 'mine.txt'));
  });
});
