import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const run = promisify(execFile);
const { scripts } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')) as { scripts: Record<string, string> };
const COMMANDS = Object.entries(scripts).filter(([, command]) => /^tsx scripts\/[\w-]+\.ts$/.test(command));

describe('--help of every command of the kit', () => {
  it('finds the commands that package.json offers', () => {
    expect(COMMANDS.map(([name]) => name)).toEqual(
      expect.arrayContaining(['review', 'sweep', 'notebook', 'year-end', 'demo']),
    );
  });

  it.each(COMMANDS)(
    '%s: what it does, an example by its own name, the exit statuses',
    async (name, command) => {
      const file = command.replace('tsx ', '');
      const { stdout } = await run(process.execPath, ['--import', 'tsx', file, '--help'], { cwd: ROOT });
      expect(stdout).toMatch(/^Usage: /);
      expect(stdout).toContain(`npm run ${name}`);
      expect(stdout).toMatch(/Exit status/i);
    },
    120_000,
  );
});

describe('a command line that cannot be followed', () => {
  const SAMPLE = 'data-samples/sorrel-fork';
  it.each([
    ['review.ts', SAMPLE, '--pdf', '--chromium', '/no/such/browser'],
    ['review.ts', SAMPLE, '--previous', '/no/such/season'],
    ['year-end.ts', SAMPLE, '--date', '2025-13-01'],
    ['sweep.ts', SAMPLE, '--years', 'soon'],
    ['load.ts'],
  ])(
    '%s %s %s %s: ends with 2 before any work',
    async (script, ...args) => {
      const ended = await run(process.execPath, ['--import', 'tsx', `scripts/${script}`, ...args], { cwd: ROOT }).catch(
        (error: { code: number; stderr: string }) => error,
      );
      expect(ended).toMatchObject({ code: 2 });
      expect(ended.stderr).not.toMatch(/^(Load|Analyse) /m);
    },
    120_000,
  );
});
