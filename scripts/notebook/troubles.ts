import { existsSync, readFileSync } from 'node:fs';
import { errorText } from '../../src/base/error-text.ts';
import { formatProblem, InputError, type Problem } from '../../src/base/errors.ts';
import { callSite } from '../../src/notebook/form/call-site.ts';
import { pathSaid } from './import-notebook.ts';

/** One thing that keeps a notebook from its page, with its place and the lines around it. */
export interface Trouble {
  /** `NOTEBOOK_SYNTAX`, `SEASON_UNIT`, or the kind of error that was thrown: `TypeError` */
  kind: string;
  message: string;
  /** as a reader would type it */
  file: string | null;
  line: number | null;
  column: number | null;
  excerpt: readonly { line: number; text: string }[];
}

/** What was thrown, as troubles; bad input tells all of its own. @param base  folder that problems' files lie in */
export function troublesOf(error: unknown, base: string): Trouble[] {
  if (error instanceof InputError) return error.problems.map((problem) => ofProblem(problem, base));
  const kind = error instanceof Error ? error.name : 'Error';
  const message = errorText(error);
  const site = error instanceof Error ? callSite(error.stack) : null;
  if (site === null) return [{ kind, message, file: null, line: null, column: null, excerpt: [] }];
  const { file, line, column } = site;
  return [{ kind, message, file: pathSaid(file), line, column, excerpt: excerptOf(file, line) }];
}

function ofProblem({ code, file, line, column, message }: Problem, base: string): Trouble {
  const path = file === undefined ? null : [file, `${base}/${file}`].find((one) => existsSync(one));
  return {
    kind: code,
    message,
    file: file ?? null,
    line: line ?? null,
    column: column ?? null,
    excerpt: path === undefined || path === null || line === undefined ? [] : excerptOf(path, line),
  };
}

/** The line with two before and after it. */
function excerptOf(path: string, line: number): Trouble['excerpt'] {
  try {
    const lines = readFileSync(path, 'utf8').split('\n');
    const first = Math.max(1, line - 2);
    return lines.slice(first - 1, line + 2).map((text, i) => ({ line: first + i, text }));
  } catch {
    return [];
  }
}

/** `TypeError my-page.ts:12:5 cannot read …`, for a terminal. */
export function troubleSaid({ kind, file, line, column, message }: Trouble): string {
  return formatProblem({
    code: kind,
    message,
    ...(file === null ? {} : { file }),
    ...(line === null ? {} : { line }),
    ...(column === null ? {} : { column }),
  });
}

/** What a notebook throws by itself is its writer's to mend, not a fault of the kit: told with its place, as bad input is. */
export function asInputError(error: unknown): unknown {
  if (error instanceof InputError || !(error instanceof Error)) return error;
  const site = callSite(error.stack);
  if (site === null) return error;
  const { file, line, column } = site;
  const message = `throws as it is read: ${error.name}: ${error.message}`;
  return new InputError([{ code: 'NOTEBOOK_THROWS', file: pathSaid(file), line, column, message }]);
}
