import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { started } from '../../support/run-script.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'stopped-'));
  makeSeasonFolder(join(dir, 'season'), { ...SMALL_SEASON, bins: 5, sensors: 5 });
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

// Ctrl-C sends the one, schedulers and shutdowns the other (common practice); 130 is what the help says.
it.each(['SIGINT', 'SIGTERM'] as const)(
  'a sweep stopped by %s says that what is done is kept, and ends with 130 before its next fit but one',
  async (signal) => {
    const out = join(dir, signal);
    const child = started('sweep.ts', [join(dir, 'season'), '--out', out, '--workers', '1', '--no-hindsight']);
    let told = '';
    child.stderr.on('data', (text) => {
      told += text;
      // Again at every word, as a terminal may.
      if (told.includes('Model ')) child.kill(signal);
    });
    const status = await new Promise((done) => child.on('close', done));
    expect(told).toContain('Stopped. What is done is kept; the same command goes on from there.');
    expect(status).toBe(130);
    // Of five bins: the next fit may have begun, the rest has not.
    expect(told.match(/^Model /gm)?.length).toBeLessThanOrEqual(3);
    expect(existsSync(join(out, 'sweep.json'))).toBe(false);
    expect(existsSync(join(out, 'fits.jsonl'))).toBe(true);
  },
);
