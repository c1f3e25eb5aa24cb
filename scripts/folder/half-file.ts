import { existsSync, lstatSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { ANY_MARK, hasEnded, PROCESS_MARK } from './process-mark.ts';

/** Where a file is written before it is moved into its place. */
export function halfOf(path: string): string {
  return `${path}.new-${PROCESS_MARK}`;
}

/** Take away what runs that were killed left half-written beside a file; of a run that may still be going it stays. */
export function clearHalves(path: string): void {
  const folder = dirname(path);
  const start = `${basename(path)}.new-`;
  for (const name of existsSync(folder) ? readdirSync(folder) : []) {
    if (!name.startsWith(start)) continue;
    const mark = name.slice(start.length);
    const half = join(folder, name);
    if (new RegExp(`^${ANY_MARK}$`).test(mark) && hasEnded(mark) && lstatSync(half).isFile()) rmSync(half);
  }
}
