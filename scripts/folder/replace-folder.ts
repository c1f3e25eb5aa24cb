import { existsSync, rmSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { InputError } from '../../src/base/errors.ts';
import { diskProblem } from './disk-problem.ts';

/** How a folder that a command wrote earlier is told from one with somebody's own files. */
export interface OwnFolder {
  /** names that all stand in it */
  marks: readonly string[];
  /** every name in it fits; a name that does not is somebody's own file, and the folder is left alone */
  own: RegExp;
}

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
 * what stood in `out` stays as it was.
 *
 * @throws InputError OUT_FOLDER where the disk does not take it
 */
export async function replaceFolder(out: string, fill: (folder: string) => Promise<void> | void): Promise<void> {
  const beside = (what: string) => join(dirname(out), `.${basename(out)}-${what}-${process.pid}`);
  const fresh = beside('new');
  const old = beside('old');
  const sweep = () => rmSync(fresh, { recursive: true, force: true });
  const interrupted = () => process.exit(130);
  sweep();
  process.once('exit', sweep);
  process.once('SIGINT', interrupted);
  process.once('SIGTERM', interrupted);
  try {
    await mkdir(fresh, { recursive: true });
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
    await rm(old, { recursive: true, force: true });
    process.off('exit', sweep);
    process.off('SIGINT', interrupted);
    process.off('SIGTERM', interrupted);
  }
}
