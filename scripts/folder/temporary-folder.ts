import { lstatSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { diskProblem } from './disk-problem.ts';
import { ANY_MARK, hasEnded, PROCESS_MARK } from './process-mark.ts';

/** Such folders of the kit, by what they hold. */
interface Kind {
  /** `fanbook-work` */
  name: string;
  /** what the kit itself writes there */
  own: RegExp;
}

/**
 * A new folder among the system's temporary ones. What runs that were killed left of its kind goes first; that of a run that may still be
 * going, of somebody else, or with anything in it that the kit does not write, stays.
 *
 * @throws InputError TEMP_FOLDER where the disk does not take it
 */
export function temporaryFolder(kind: Kind): string {
  const folder = tmpdir();
  clearEnded(folder, kind);
  try {
    return mkdtempSync(join(folder, `${kind.name}-${PROCESS_MARK}-`));
  } catch (error) {
    throw temporaryProblem(error, join(folder, kind.name));
  }
}

/** What was thrown while the kit wrote into a temporary folder, as bad input where the disk would not take it; else as it was. */
export function temporaryProblem(error: unknown, path: string): unknown {
  const stands = 'It is a working file of the run; TMPDIR names another place for such files.';
  return diskProblem(error, { code: 'TEMP_FOLDER', path, folder: tmpdir(), stands });
}

function clearEnded(folder: string, { name, own }: Kind): void {
  const named = new RegExp(`^${name}-(${ANY_MARK})-[A-Za-z0-9]{6}$`);
  for (const one of namesIn(folder)) {
    const [, mark] = named.exec(one) ?? [];
    // This process may have another such folder at work.
    if (mark === undefined || mark === PROCESS_MARK || !hasEnded(mark)) continue;
    const path = join(folder, one);
    // Everybody writes there: what cannot be looked at or taken away is not this run's trouble.
    try {
      const { uid } = lstatSync(path);
      if (lstatSync(path).isDirectory() && uid === process.getuid?.() && namesIn(path).every((each) => own.test(each)))
        rmSync(path, { recursive: true, force: true });
    } catch {}
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
