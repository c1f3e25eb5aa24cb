import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { InputError, type Problem } from '../../src/base/errors.ts';
import { diskProblem } from '../folder/disk-problem.ts';
import { clearHalves, halfOf } from '../folder/half-file.ts';
import { type Drawn, drawNotebook } from './draw-notebook.ts';
import { importNotebook, notebookPath } from './import-notebook.ts';
import { openSeason } from './open-season.ts';
import { asInputError, troubleSaid, troublesOf } from './troubles.ts';

export interface NotebookOptions {
  notebook: string;
  seasonFolder: string;
  /** the file to write; null: `pages/` in the season folder */
  out: string | null;
  models: boolean;
  /** what the page prints as the time of making, ms UTC */
  generatedAtMs: number;
  /** told one line a stage */
  onStage(line: string): void;
}

/**
 * One notebook's page of one season, written as a file, whole or not at all.
 *
 * @throws InputError with every problem of the notebook's and the season's files together; then nothing is written
 */
export async function runNotebook(options: NotebookOptions): Promise<{ out: string; failures: string[] }> {
  const { seasonFolder, models, onStage: say } = options;
  const path = attempt(() => notebookPath(options.notebook));
  const [notebook, season] = await Promise.allSettled([
    path.then((found) => importNotebook(found)).catch((error) => Promise.reject(asInputError(error))),
    openSeason(seasonFolder, { models, say }),
  ]);
  if (notebook.status === 'rejected' || season.status === 'rejected') throw together([notebook, season]);
  const drawn = await drawNotebook(notebook.value, await path, seasonFolder, season.value, options.generatedAtMs);
  const out = options.out === null ? join(resolve(seasonFolder), 'pages', drawn.file) : resolve(options.out);
  writePage(out, drawn);
  return { out, failures: failuresOf(drawn, seasonFolder) };
}

/** Each with its place where it is known, and what has no place besides. */
function failuresOf({ failures, errors }: Drawn, seasonFolder: string): string[] {
  return errors.length >= failures.length
    ? errors.flatMap((error) => troublesOf(error, seasonFolder)).map(troubleSaid)
    : failures;
}

async function attempt<T>(work: () => T): Promise<T> {
  return work();
}

/** All problems of all that failed; a fault of the kit goes before. */
function together(all: readonly PromiseSettledResult<unknown>[]): unknown {
  const reasons = all.flatMap((one) => (one.status === 'rejected' ? [one.reason] : []));
  const fault = reasons.find((reason) => !(reason instanceof InputError));
  return fault ?? new InputError(reasons.flatMap((reason): readonly Problem[] => (reason as InputError).problems));
}

const MARK = '<meta name="generator" content="fanbook';

/** @throws InputError where something else than a page of the kit stands there */
function writePage(out: string, { html }: Drawn): void {
  const refuse = (message: string) => new InputError([{ code: 'OUT_FILE', file: out, message }]);
  if (existsSync(out)) {
    if (!statSync(out).isFile()) throw refuse('is a folder. Give --out the name of a file, e.g. my-page.html.');
    if (!readFileSync(out, 'utf8').slice(0, 2000).includes(MARK)) {
      throw refuse('is no page that the kit wrote; it is left alone. Give --out another name.');
    }
  }
  const fresh = halfOf(out);
  try {
    mkdirSync(dirname(out), { recursive: true });
    clearHalves(out);
    writeFileSync(fresh, html);
    renameSync(fresh, out);
  } catch (error) {
    rmSync(fresh, { force: true });
    const stands = existsSync(out) ? 'What stands there stays as it was.' : 'Nothing of it is left behind.';
    const told = diskProblem(error, { code: 'OUT_FILE', path: out, folder: dirname(out), stands });
    if (told !== error) throw told;
    throw refuse(`cannot be written (${(error as NodeJS.ErrnoException).code}). Give --out another place.`);
  }
}
