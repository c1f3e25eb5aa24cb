import { InputError, type Problem } from '../../src/base/errors.ts';
import type { AnyNotebook } from '../notebook/import-notebook.ts';

/**
 * A person's own notebooks, to become pages of a review beside the kit's.
 *
 * @param taken  ids of the pages that are there already
 * @throws       InputError with the problems of all of them, an id that is used twice among them
 */
export async function ownNotebooks(paths: readonly string[], taken: readonly string[]): Promise<AnyNotebook[]> {
  if (paths.length === 0) return [];
  // What translates notebooks is loaded for them alone.
  const { importNotebook, notebookPath } = await import('../notebook/import-notebook.ts');
  const { asInputError } = await import('../notebook/troubles.ts');
  const problems: Problem[] = [];
  const found: AnyNotebook[] = [];
  for (const path of paths) {
    try {
      const notebook = await importNotebook(notebookPath(path));
      const { id } = notebook;
      if ([...taken, 'index', ...found.map((one) => one.id)].includes(id)) {
        const message = `its id "${id}" is that of another page. Give it another title, or an id of its own beside the title.`;
        problems.push({ code: 'NOTEBOOK_ID', file: path, message });
      }
      found.push(notebook);
    } catch (error) {
      const told = asInputError(error);
      if (!(told instanceof InputError)) throw error;
      problems.push(...told.problems);
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  return found;
}
