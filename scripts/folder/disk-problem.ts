import { statfsSync } from 'node:fs';
import { InputError } from '../../src/base/errors.ts';

/** What a disk answers that takes no more, or nothing, with the next step; errors of the kit's own making are none of these. */
const ANSWERS: Readonly<Record<string, readonly [what: string, next: string]>> = {
  ENOSPC: ['the disk is full', 'Free some space, or name a place on another disk.'],
  EDQUOT: ['your share of the disk is used up', 'Free some space, or name a place on another disk.'],
  EFBIG: [
    'a file would be larger than may be written',
    'Raise the limit (ulimit -f), or name a place on another disk.',
  ],
  EROFS: ['the disk can only be read', 'Name a place that can be written.'],
  EACCES: ['you may not write there', 'Mend the permissions, or name another place.'],
  EPERM: ['you may not write there', 'Mend the permissions, or name another place.'],
  EIO: ['the disk fails', 'Look after the disk and its cable, or name a place on another disk.'],
  ENXIO: ['the disk is gone', 'Put it back, or name a place on another disk.'],
  ENODEV: ['the disk is gone', 'Put it back, or name a place on another disk.'],
  ESTALE: ['the network disk is gone', 'Put it back, or name a place on another disk.'],
  ENAMETOOLONG: ['its name is too long', 'Name a place with a shorter name.'],
  EMFILE: ['too many files are open', 'Close some programs, or raise the limit (ulimit -n), and run it again.'],
  ENFILE: ['too many files are open', 'Close some programs and run it again.'],
};

/**
 * What was thrown while the kit wrote, as bad input where the disk would not take it; else as it was.
 *
 * @param code    `OUT_FOLDER`, `OUT_FILE`
 * @param path    what was being written
 * @param folder  one that is there, on the same disk
 * @param stands  what has become of what was written before, a sentence
 */
export function diskProblem(
  error: unknown,
  { code, path, folder, stands }: { code: string; path: string; folder: string; stands: string },
): unknown {
  const errno = error instanceof Error && 'syscall' in error ? (error as NodeJS.ErrnoException).code : undefined;
  if (errno === undefined || !Object.hasOwn(ANSWERS, errno)) return error;
  const [what, next] = ANSWERS[errno];
  const free = errno === 'ENOSPC' ? freeSaid(folder) : '';
  const message = `${path} cannot be written: ${what} (${errno})${free}. ${stands} ${next}`;
  return new InputError([{ code, message }]);
}

/** `; 0.4 MB are free there`; nothing where the disk does not tell. */
function freeSaid(folder: string): string {
  try {
    const { bavail, bsize, files, ffree } = statfsSync(folder);
    if (files > 0 && ffree === 0) return '; it holds as many files as it can';
    return `; ${((bavail * bsize) / 1e6).toFixed(1)} MB are free there`;
  } catch {
    return '';
  }
}
