import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';
import { Tinypool } from 'tinypool';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import type { SweepTask } from './sweep-task.ts';

export interface SweepPool {
  run: (task: SweepTask) => Promise<FinishedRun[]>;
  close: () => Promise<void>;
}

/** Worker threads that run tasks. @param workers  1 or more */
export function sweepPool(workers: number): SweepPool {
  const dir = mkdtempSync(join(tmpdir(), 'fanbook-sweep-'));
  const clear = () => rmSync(dir, { recursive: true, force: true });
  process.once('exit', clear);
  const pool = new Tinypool({
    filename: pathToFileURL(oneFile(dir)).href,
    minThreads: workers,
    maxThreads: workers,
    // The parent's own flags would have each worker load the loader of TypeScript.
    execArgv: [],
  });
  return {
    run: (task) => pool.run(task),
    close: async () => {
      await pool.destroy();
      process.off('exit', clear);
      clear();
    },
  };
}

/** The task and all that it imports as one file of JavaScript: a worker would take half a second to load and turn each file itself. */
function oneFile(dir: string): string {
  const outfile = join(dir, 'sweep-task.mjs');
  buildSync({
    entryPoints: [fileURLToPath(new URL('./sweep-task.ts', import.meta.url))],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
  });
  return outfile;
}
