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
