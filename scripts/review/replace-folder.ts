import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { InputError } from '../../src/base/errors.ts';

/** Files by which a folder is known as an earlier review that may be replaced. */
const MARKS = ['summary.json', 'index.html'];

/**
 * A folder that holds something else than a review is never replaced, and neither is one with the season in it.
 *
 * @throws InputError OUT_FOLDER
 */
export async function assertReplaceable(out: string, seasonFolder: string): Promise<void> {
  const refuse = (found: string): never => {
    const message = `${out} ${found}. Give --out a new folder or an earlier review.`;
    throw new InputError([{ code: 'OUT_FOLDER', message }]);
  };
  const season = resolve(seasonFolder);
  if (season === out || season.startsWith(`${out}/`)) refuse('holds the season itself');
  if (!existsSync(out)) return;
  const names = await readdir(out).catch(() => refuse('is not a folder'));
  if (names.length > 0 && !MARKS.every((mark) => names.includes(mark))) refuse('holds files that are no review');
}

/**
 * Fill a new folder beside `out` and move it into place whole: when `fill` fails or the process is interrupted,
 * what stood in `out` stays as it was.
 */
export async function replaceFolder(out: string, fill: (folder: string) => Promise<void>): Promise<void> {
  const beside = (what: string) => join(dirname(out), `.${basename(out)}-${what}-${process.pid}`);
  const fresh = beside('new');
  const old = beside('old');
  await rm(fresh, { recursive: true, force: true });
  await mkdir(fresh, { recursive: true });
  try {
    await fill(fresh);
    if (existsSync(out)) await rename(out, old);
    try {
      await rename(fresh, out);
    } catch (error) {
      if (existsSync(old)) await rename(old, out);
      throw error;
    }
  } finally {
    await rm(fresh, { recursive: true, force: true });
    await rm(old, { recursive: true, force: true });
  }
}
