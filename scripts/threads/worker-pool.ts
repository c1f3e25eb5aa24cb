import { rmSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { Tinypool } from 'tinypool';
import { temporaryFolder, temporaryProblem } from '../folder/temporary-folder.ts';

/** Worker threads that run the functions which modules of ours export. */
export interface WorkerPool {
  /**
   * @param module  of TypeScript; made into one file when first asked for
   * @param name    of the function; its input and what it gives back are cloned, errors come back as they were thrown
   */
  job<In, Out>(module: URL, name: string): (input: In) => Promise<Out>;
  close(): Promise<void>;
}

/** What the threads run. */
const WORK = { name: 'fanbook-work', own: /^task-\d+\.mjs$/ };

/** @param workers  1 or more; threads begin when the first work comes */
export function workerPool(workers: number): WorkerPool {
  let dir: string | undefined;
  const clear = () => dir !== undefined && rmSync(dir, { recursive: true, force: true });
  const files = new Map<string, Promise<string>>();
  const fileOf = (path: string) => {
    if (dir === undefined) {
      dir = temporaryFolder(WORK);
      process.once('exit', clear);
    }
    const file = files.get(path) ?? oneFile(path, join(dir, `task-${files.size}.mjs`));
    files.set(path, file);
    return file;
  };
  let pool: Tinypool | undefined;
  const start = (filename: string) => {
    pool ??= new Tinypool({
      filename,
      minThreads: workers,
      maxThreads: workers,
      // The parent's own flags would have each worker load the loader of TypeScript.
      execArgv: [],
    });
    return pool;
  };
  return {
    job: (module, name) => {
      const path = fileURLToPath(module);
      return async (input) => {
        const file = await fileOf(path);
        return start(file).run(input, { filename: file, name });
      };
    },
    close: async () => {
      await Promise.allSettled(files.values());
      await pool?.destroy();
      process.off('exit', clear);
      clear();
    },
  };
}

/** A module and all that it imports as one file of JavaScript: a worker would take half a second and more to load and turn each file itself. */
async function oneFile(entry: string, outfile: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    // Written here, so that a disk that takes no more answers by its own name.
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'silent',
    // Packages of the older form ask for their parts as they run.
    banner: {
      js: "import { createRequire as requireOf } from 'node:module'; const require = requireOf(import.meta.url);",
    },
  });
  await writeFile(outfile, outputFiles[0].contents).catch((error: unknown) => {
    throw temporaryProblem(error, outfile);
  });
  return pathToFileURL(outfile).href;
}
