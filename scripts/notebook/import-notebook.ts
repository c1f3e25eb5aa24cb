import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { InputError, type Problem } from '../../src/base/errors.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import type { Page } from '../../src/report/page.ts';
import { KIT } from './kit-folder.ts';
import { translate } from './translate.ts';

/** What every form of a notebook has. */
export interface AnyNotebook {
  id: string;
  title: string;
  page(input: NotebookInput): Page | Promise<Page>;
}

/** A path as its reader would type it. */
export function pathSaid(path: string): string {
  const near = relative(process.cwd(), path);
  return near.startsWith('../..') ? path : near;
}

/** The absolute path of a notebook. @throws InputError where there is none, or it is no TypeScript or JavaScript */
export function notebookPath(given: string): string {
  const path = resolve(given);
  const problem = (message: string) => new InputError([{ code: 'NOTEBOOK_FILE', file: given, message }]);
  if (!existsSync(path)) {
    throw problem('there is no such file. Name a notebook, or write one with npm run new-notebook -- my-page.');
  }
  if (!statSync(path).isFile()) throw problem('is no file. Name a notebook, e.g. notebooks/first-look.ts.');
  if (!/^\.m?[tj]s$/.test(extname(path)))
    throw problem('is no notebook; a notebook is a TypeScript file, e.g. my-page.ts.');
  return realpathSync(path);
}

/**
 * Import a notebook afresh.
 *
 * @param onFiles  told the notebook's own files, also where they cannot be imported: what to look at for changes
 * @throws         InputError with every problem of its files, or what its first lines throw
 */
export async function importNotebook(
  path: string,
  onFiles: (files: readonly string[]) => void = () => {},
): Promise<AnyNotebook> {
  const folder = onceFolder();
  try {
    const { entry, files, problems } = await translate(path, folder, pathSaid);
    onFiles(files);
    if (entry === null) throw new InputError(problems);
    const module: { default?: unknown } = await import(pathToFileURL(entry).href);
    const found = module.default;
    if (!isNotebook(found)) throw new InputError([noNotebook(path, found)]);
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function isNotebook(of: unknown): of is AnyNotebook {
  return typeof of === 'object' && of !== null && 'page' in of && typeof of.page === 'function' && 'id' in of;
}

function noNotebook(path: string, found: unknown): Problem {
  const what =
    found === undefined
      ? 'exports nothing by default'
      : `exports ${typeof found === 'object' ? 'an object' : `a ${typeof found}`} by default that is no notebook`;
  const message = `${what}. Write \`export default notebook({ title, question }, (sheet) => { … })\`.`;
  return { code: 'NOTEBOOK_EXPORT', file: pathSaid(path), message };
}

/** Inside the kit, so that its packages are found; where that cannot be written to, among the system's. */
function onceFolder(): string {
  const inside = join(KIT, 'node_modules', '.cache', 'fanbook');
  try {
    mkdirSync(inside, { recursive: true });
    return mkdtempSync(join(inside, 'notebook-'));
  } catch {
    return mkdtempSync(join(tmpdir(), 'fanbook-notebook-'));
  }
}
