/** One thing that is wrong with what the user gave: what, where, what was given, what is allowed, the next step. */
export interface Problem {
  /** stable code in capitals, e.g. `SEASON_UNIT` */
  code: string;
  /** path inside the season folder, `season.yaml` among them */
  file?: string;
  /** counted from 1 */
  line?: number;
  /** counted from 1 */
  column?: number;
  /** whole sentences: what was found, what is allowed, what to do */
  message: string;
}

/** `SEASON_UNIT season.yaml:31:17 bins[0].diameter is "36"; …` */
export function formatProblem(problem: Problem): string {
  const place = [problem.file, problem.line, problem.column].filter((part) => part !== undefined).join(':');
  return [problem.code, place, problem.message].filter((part) => part !== '').join(' ');
}

/** Bad input, told whole: every problem that was found, never only the first. */
export class InputError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(formatProblem).join('\n'));
    this.name = 'InputError';
    this.problems = problems;
  }
}

/** A number outside what a formula holds for. Written so that NaN fails too. */
export function assertRange(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} is ${value}; it must lie between ${low} and ${high}.`);
  }
}
