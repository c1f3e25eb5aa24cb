import { existsSync, rmSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { InputError } from '../../src/base/errors.ts';
import { diskProblem } from './disk-problem.ts';
import { besideOf, clearLeftovers } from './leftovers.ts';
import type { OwnFolder } from './own-folder.ts';

/**
 * A folder that holds something else than an earlier output is never replaced, and neither is one with the season in it;
 * one that cannot be written is told before the work, not after it.
 *
 * @throws InputError OUT_FOLDER
 */
export async function assertReplaceable(out: string, seasonFolder: string, known: OwnFolder): Promise<void> {
  const refuse = (found: string, next = 'Give --out a new folder or an earlier output of this command.'): never => {
    const message = `${out} ${found}; it is left alone. ${next}`;
    throw new InputError([{ code: 'OUT_FOLDER', message }]);
  };
  const season = resolve(seasonFolder);
  if (season === out || season.startsWith(`${out}/`)) refuse('holds the season itself');
  await tryWriting(dirname(out)).catch((error) => {
    const told = diskProblem(error, {
      code: 'OUT_FOLDER',
      path: out,
      folder: dirname(out),
      stands: 'Nothing is changed.',
    });
    if (told !== error) throw told;
    refuse(`cannot be written (${error.code})`, 'Give a folder that can.');
  });
  if (!existsSync(out)) return;
  const names = await readdir(out).catch(() => refuse('is not a folder'));
  const foreign = names.filter((name) => !known.own.test(name));
  if (foreign.length > 0) refuse(`holds files of its own (${foreign.slice(0, 5).join(', ')})`);
  if (names.length > 0 && !known.marks.every((mark) => names.includes(mark))) refuse('holds no earlier output');
}

/** Tried, since permissions alone do not tell a read-only disk; of a folder that is not there yet, where it would be made. */
async function tryWriting(folder: string): Promise<void> {
  if (!existsSync(folder)) return tryWriting(dirname(folder));
  await rmdir(await mkdtemp(join(folder, '.fanbook-')));
}

/**
 * Fill a new folder beside `out` and move it into place whole: when `fill` fails or the process is interrupted,
 * what stood in `out` stays as it was. What runs that were killed left beside it goes.
 *
 * @throws InputError OUT_FOLDER where the disk does not take it
 */
export async function replaceFolder(
  out: string,
  known: OwnFolder,
  fill: (folder: string) => Promise<void> | void,
): Promise<void> {
  const fresh = besideOf(out, 'new');
  const old = besideOf(out, 'old');
  let begun = false;
  const sweep = () => {
    if (begun) rmSync(fresh, { recursive: true, force: true });
  };
  const interrupted = () => process.exit(130);
  process.once('exit', sweep);
  process.on('SIGINT', interrupted);
  process.on('SIGTERM', interrupted);
  try {
    clearLeftovers(out, known);
    await mkdir(dirname(fresh), { recursive: true });
    // Fails where something stands there that is not the kit's, which is left alone.
    await mkdir(fresh);
    begun = true;
    await fill(fresh);
    if (existsSync(out)) await rename(out, old);
    try {
      await rename(fresh, out);
    } catch (error) {
      if (existsSync(old)) await rename(old, out);
      throw error;
    }
  } catch (error) {
    // Told after what was begun is away, so that the free space is what there is for the next run.
    sweep();
    const stands = existsSync(out) ? 'What stands there stays as it was.' : 'Nothing of it is left behind.';
    throw diskProblem(error, { code: 'OUT_FOLDER', path: out, folder: dirname(out), stands });
  } finally {
    sweep();
    // Where neither could be moved into place, the one before is kept beside it.
    if (existsSync(out)) await rm(old, { recursive: true, force: true });
    process.off('exit', sweep);
    process.off('SIGINT', interrupted);
    process.off('SIGTERM', interrupted);
  }
}
