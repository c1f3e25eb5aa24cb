import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeSeasonFolder, SMALL_SEASON } from '../../support/season-folder.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const LACKS_PARALLEL = spawnSync('parallel', ['--version']).status !== 0 && process.env.CI !== 'true';
let dir: string;

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'parallel-'));
  makeSeasonFolder(join(dir, 'season'), { ...SMALL_SEASON, cables: 1, hours: 24 * 8 });
  // Stands in for ssh: notes the machine that was asked for, and does there, here, what it is told. A login sets SHELL.
  writeFileSync(
    join(dir, 'ssh'),
    `#!/bin/sh\nwhile [ "\${1#-}" != "$1" ]; do shift; done\necho "$1" >> ${dir}/hosts\nshift\n[ "$1" = "--" ] && shift\nexport SHELL=/bin/sh\nexec sh -c "$*"\n`,
    { mode: 0o755 },
  );
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

// What shards and their merge hold is tested elsewhere; here that the shares go out to the machines named and come back.
describe.skipIf(LACKS_PARALLEL)('with-parallel.sh (skipped where GNU parallel is not installed; CI has it)', () => {
  it('spreads the shares over PARALLEL_HOSTS and merges them', { timeout: 600_000 }, () => {
    const run = spawnSync(
      'scripts/sweep/with-parallel.sh',
      [join(dir, 'season'), '2', join(dir, 'shares'), '--strategies', 'always-on'],
      {
        cwd: ROOT,
        encoding: 'utf8',
        env: { ...process.env, PARALLEL_HOSTS: '1/barn,1/office', PARALLEL_SSH: join(dir, 'ssh') },
      },
    );
    expect(run.stderr).not.toMatch(/parallel: (Error|Warning)/);
    expect(run.status, run.stderr).toBe(0);
    const hosts = new Set(readFileSync(join(dir, 'hosts'), 'utf8').trim().split('\n'));
    expect([...hosts].sort()).toEqual(['barn', 'office']);
    const merged = JSON.parse(readFileSync(join(dir, 'shares', 'merged', 'sweep.json'), 'utf8'));
    expect(merged.rows).toBe(merged.plan.bins.length * merged.plan.bins[0].weathers.length);
  });

  it('ends with 2 and says how it is used where it is given too little', () => {
    const run = spawnSync('scripts/sweep/with-parallel.sh', ['season'], { cwd: ROOT, encoding: 'utf8' });
    expect(run.status).toBe(2);
    expect(run.stderr).toContain('SEASON SHARDS SHARES');
  });
});
