import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { PROCESS_MARK } from '../../scripts/folder/process-mark.ts';
import { workerPool } from '../../scripts/threads/worker-pool.ts';
import { ROOT } from '../support/run-script.ts';

const HERE = PROCESS_MARK.slice(PROCESS_MARK.indexOf('-') + 1);
const BIN_TASK = join(ROOT, 'scripts', 'threads', 'bin-task.ts');
let folder = '';
let before: string | undefined;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fanbook-temporary-'));
  before = process.env.TMPDIR;
  process.env.TMPDIR = folder;
});
afterEach(() => {
  if (before === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = before;
  rmSync(folder, { recursive: true, force: true });
});

/** What a run left, with a file that its threads ran. */
function left(mark: string, file = 'task-0.mjs'): string {
  const path = join(folder, `fanbook-work-${mark}-aB3dE6`);
  mkdirSync(path);
  writeFileSync(join(path, file), '');
  return basename(path);
}

/** A pool that makes its folder and then fails at a module that is not there. */
async function begun(): Promise<string[]> {
  const pool = workerPool(1);
  await expect(pool.job(new URL('./no-such-task.ts', import.meta.url), 'none')(null)).rejects.toThrow();
  const names = readdirSync(folder);
  await pool.close();
  return names;
}

it('what killed runs left goes as the next one begins; of live ones, other machines and other hands it stays', async () => {
  const child = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
  try {
    const ended = `${spawnSync(process.execPath, ['-e', '']).pid}-${HERE}`;
    left(ended);
    const stay = [
      left(`${child.pid}-${HERE}`),
      left(ended.replace(HERE, HERE === '00000000' ? '11111111' : '00000000')),
      left(`${spawnSync(process.execPath, ['-e', '']).pid}-${HERE}`, 'family-photos.txt'),
    ];
    const link = `fanbook-work-${ended}-Ln4kLn`;
    symlinkSync(folder, join(folder, link));
    const during = await begun();
    const own = during.filter((name) => name.startsWith(`fanbook-work-${PROCESS_MARK}-`));
    expect(own).toHaveLength(1);
    expect(during.sort()).toEqual([...stay, link, ...own].sort());
    // Its own goes with it, and a second pool leaves the first one's.
    expect(readdirSync(folder).sort()).toEqual([...stay, link].sort());
  } finally {
    child.kill();
  }
});

it('a pool takes nothing from another of its process', async () => {
  const name = left(PROCESS_MARK);
  await begun();
  expect(existsSync(join(folder, name))).toBe(true);
});

it('a disk that takes no working file is bad input, told with its place and another (POSIX.1-2017 write(): EFBIG)', () => {
  const script = join(folder, 'run.mts');
  writeFileSync(
    script,
    `import { workerPool } from ${JSON.stringify(join(ROOT, 'scripts/threads/worker-pool.ts'))};
     const pool = workerPool(1);
     await pool.job(new URL(${JSON.stringify(`file://${BIN_TASK}`)}), 'whatIfOfBin')({}).catch((error) => console.log(error.constructor.name, error.message));
     await pool.close();`,
  );
  const limited = `ulimit -f 1; exec "${process.execPath}" --import tsx "${script}"`;
  const { stdout } = spawnSync('bash', ['-c', limited], { cwd: ROOT, encoding: 'utf8' });
  expect(stdout).toMatch(
    /^InputError TEMP_FOLDER \S+\/fanbook-work-\S+\/task-0\.mjs cannot be written: a file would be larger than may be written \(EFBIG\)\. It is a working file of the run; TMPDIR names another place/,
  );
});
