import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';
import { Tinypool } from 'tinypool';
import type { ModelCase } from './model-cases.ts';
import type { ModelTask } from './model-task.ts';

const MOST_WORKERS = 2;

/** Drawn seasons are fitted on one worker a core, two at most. */
export async function withModelPool(use: (run: (task: ModelTask) => Promise<ModelCase[]>) => Promise<void>) {
  const dir = mkdtempSync(join(tmpdir(), 'fanbook-model-'));
  try {
    const workers = Math.min(MOST_WORKERS, availableParallelism());
    const filename = pathToFileURL(oneFile(dir)).href;
    const pool = new Tinypool({ filename, minThreads: workers, maxThreads: workers, execArgv: [] });
    try {
      await use((task) => pool.run(task));
    } finally {
      await pool.destroy();
    }
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** The task and what it imports of ours as one file of JavaScript; packages are found through a link. */
function oneFile(dir: string): string {
  const outfile = join(dir, 'model-task.mjs');
  symlinkSync(fileURLToPath(new URL('../../../node_modules', import.meta.url)), join(dir, 'node_modules'), 'junction');
  buildSync({
    entryPoints: [fileURLToPath(new URL('./model-task.ts', import.meta.url))],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
  });
  return outfile;
}
