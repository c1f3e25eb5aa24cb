import { existsSync, lstatSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { OwnFolder } from './own-folder.ts';
import { ANY_MARK, hasEnded, PROCESS_MARK } from './process-mark.ts';

/** The folder beside `out` that is being built, or that stood there before. */
export function besideOf(out: string, what: 'new' | 'old', mark = PROCESS_MARK): string {
  return join(dirname(out), `.${basename(out)}-${what}-${mark}`);
}

/**
 * Take away what runs that were killed left beside `out`: half-built folders, and the output before where the new one came into its
 * place. Where a run was killed between the two, the output before goes back to its place. A folder of a run that may still be going,
 * or with anything in it that the command does not write, stays.
 */
export function clearLeftovers(out: string, known: OwnFolder): void {
  for (const old of leftovers(out, 'old', known)) {
    if (existsSync(out)) rmSync(old, { recursive: true, force: true });
    else if (known.marks.every((mark) => existsSync(join(old, mark)))) renameSync(old, out);
  }
  for (const half of leftovers(out, 'new', known)) rmSync(half, { recursive: true, force: true });
}

function leftovers(out: string, what: 'new' | 'old', { own }: OwnFolder): string[] {
  const folder = dirname(out);
  if (!existsSync(folder)) return [];
  return readdirSync(folder).flatMap((name) => {
    const [, mark] = new RegExp(`-(${ANY_MARK})$`).exec(name) ?? [];
    if (mark === undefined || join(folder, name) !== besideOf(out, what, mark) || !hasEnded(mark)) return [];
    const path = join(folder, name);
    return lstatSync(path).isDirectory() && readdirSync(path).every((one) => own.test(one)) ? [path] : [];
  });
}
