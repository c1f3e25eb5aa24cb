import type { CommanderError } from 'commander';
import { formatProblem, InputError } from '../src/base/errors.ts';

/** What the commands end with. */
export const EXIT = { whole: 0, badInput: 1, usage: 2, partly: 3, fault: 4 } as const;

/** A command line that cannot be followed: every problem of it. */
export class UsageError extends InputError {}

/** Help ends well, all else that the library of command lines stops at is a wrong command line. */
export function leave({ exitCode }: CommanderError): never {
  process.exit(exitCode === 0 ? EXIT.whole : EXIT.usage);
}

/** Seconds of SOURCE_DATE_EPOCH as ms, else the clock; a value that is no whole number of seconds is refused. */
export function generatedAtMs(stated: string | undefined, nowMs: number): number {
  if (stated === undefined || stated === '') return nowMs;
  if (!/^\d{1,12}$/.test(stated)) {
    const message = `SOURCE_DATE_EPOCH is "${stated}"; it must be whole seconds since 1970, e.g. 1735689600.`;
    throw new InputError([{ code: 'EPOCH', message }]);
  }
  return Number(stated) * 1000;
}

/** Bad input is told as one list; anything else is a fault of the kit and keeps its stack. @returns the exit status */
export function tellError(error: unknown, tell: (line: string) => void): number {
  if (error instanceof InputError) {
    const { problems } = error;
    tell(`${problems.length === 1 ? 'One problem' : `${problems.length} problems`}; nothing was written.`);
    for (const problem of problems) tell(formatProblem(problem));
    return error instanceof UsageError ? EXIT.usage : EXIT.badInput;
  }
  tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
  tell('That is a fault of the kit, not of your files; nothing was written.');
  return EXIT.fault;
}
