import { formatProblem, InputError } from '../../src/base/errors.ts';
import type { PdfWish } from './pdf-of.ts';
import { runReview } from './run-review.ts';

/** What the commands end with. */
export const EXIT = { whole: 0, badInput: 1, usage: 2, partly: 3, fault: 4 } as const;

/** Seconds of SOURCE_DATE_EPOCH as ms, else the clock; a value that is no whole number of seconds is refused. */
export function generatedAtMs(stated: string | undefined, nowMs: number): number {
  if (stated === undefined || stated === '') return nowMs;
  if (!/^\d{1,12}$/.test(stated)) {
    const message = `SOURCE_DATE_EPOCH is "${stated}"; it must be whole seconds since 1970, e.g. 1735689600.`;
    throw new InputError([{ code: 'EPOCH', message }]);
  }
  return Number(stated) * 1000;
}

/** What the command line of a review may ask for beside the season. */
export interface ReviewWishes {
  /** null: `review` in the season folder */
  out: string | null;
  models?: boolean;
  /** take what is kept of the season where no file changed since */
  keep?: boolean;
  workbook?: boolean;
  /** one's own notebooks, pages beside the kit's */
  own?: readonly string[];
  previous?: string | null;
  pdf?: PdfWish | null;
}

/** Run a review for a person at a terminal. @returns the exit status */
export async function reviewCommand(seasonFolder: string, wishes: ReviewWishes): Promise<number> {
  const tell = (line: string) => process.stderr.write(`${line}\n`);
  try {
    const madeMs = generatedAtMs(process.env.SOURCE_DATE_EPOCH, Date.now());
    const done = await runReview({ seasonFolder, ...wishes, generatedAtMs: madeMs, onStage: tell });
    process.stdout.write(`Open ${done.out}/index.html\n`);
    if (done.failures.length === 0) return EXIT.whole;
    tell(
      `${done.failures.length === 1 ? 'One part' : `${done.failures.length} parts`} could not be made; the pages say where:`,
    );
    for (const failure of done.failures) tell(`  ${failure}`);
    return EXIT.partly;
  } catch (error) {
    return tellError(error, tell);
  }
}

/** Bad input is told as one list; anything else is a fault of the kit and keeps its stack. @returns the exit status */
export function tellError(error: unknown, tell: (line: string) => void): number {
  if (error instanceof InputError) {
    const { problems } = error;
    tell(`${problems.length === 1 ? 'One problem' : `${problems.length} problems`}; nothing was written.`);
    for (const problem of problems) tell(formatProblem(problem));
    return EXIT.badInput;
  }
  tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
  tell('That is a fault of the kit, not of your files; nothing was written.');
  return EXIT.fault;
}
