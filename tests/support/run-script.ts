import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const DOOR = join(ROOT, 'src', 'notebook.ts');

/** A notebook in a folder outside the kit, without a package beside it. */
export function writtenNotebook(path: string, body: string, head = ''): string {
  writeFileSync(
    path,
    `${head}import { notebook } from '${DOOR}';\n\nexport default notebook({ title: 'Own page', question: 'How many bins?' }, ({ bins, answer, heading, figure }) => {\n${body}\n});\n`,
  );
  return path;
}

/** What a notebook that can be drawn says. */
export const GOOD = [
  'answer`$' + '{bins.length} bin.`;',
  "heading('Bins');",
  "figure({ title: 'Hours', rows: [...bins], x: 'name', y: 'fanHours' });",
].join('\n');

export interface Ended {
  status: number | null;
  out: string;
  err: string;
}

/** A command of the kit in a process of its own, the time stated. */
export function started(script: string, args: readonly string[]) {
  const env = { ...process.env, SOURCE_DATE_EPOCH: '1735689600' };
  return spawn(process.execPath, ['--import', 'tsx', join(ROOT, 'scripts', script), ...args], { cwd: ROOT, env });
}

export function run(script: string, ...args: string[]): Promise<Ended> {
  return new Promise((done) => {
    const child = started(script, args);
    let out = '';
    let err = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.on('close', (status) => done({ status, out, err }));
  });
}
