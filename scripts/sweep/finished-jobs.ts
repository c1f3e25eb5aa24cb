import { existsSync, readFileSync } from 'node:fs';
import type { FinishedRun } from '../../src/analysis/strategies/run-numbers.ts';
import { NUMBERS } from '../../src/analysis/strategies/sweep-columns.ts';
import { appendLines, writeWhole } from './whole-file.ts';

const WIDTH = NUMBERS.length + 2;
/** About 15 MB. */
const MOST_KEPT = 50_000;
const HEADER = `${JSON.stringify({ format: 1, columns: ['inputs', 'why', ...NUMBERS.map(({ name }) => name), 'reachedTarget', 'reachedMs'] })}\n`;

/**
 * Runs that are done, kept in a file as they finish, so that a sweep that was stopped goes on where it was. A run is a line,
 * a JSON array that begins with the hash of all that it hangs on; a line that a kill cut short is no array and is run anew.
 */
export class FinishedJobs {
  private readonly path: string;
  private readonly most: number;
  private readonly runs = new Map<string, FinishedRun>();
  /** of this sweep, whether run now or taken over */
  private readonly asked = new Set<string>();

  /** @param most  lines kept with those of other sweeps */
  constructor(path: string, most = MOST_KEPT) {
    this.path = path;
    this.most = most;
    const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
    // Another header is another form: nothing of it is taken over.
    const whole = text.startsWith(HEADER) && text.endsWith('\n');
    if (text.startsWith(HEADER)) for (const line of text.slice(HEADER.length).split('\n')) this.read(line);
    if (!whole) this.rewrite();
  }

  get(key: string): FinishedRun | undefined {
    this.asked.add(key);
    return this.runs.get(key);
  }

  /** Keep runs that were done together. */
  add(runs: readonly (readonly [key: string, run: FinishedRun])[]): void {
    for (const [key, run] of runs) {
      this.runs.set(key, run);
      this.asked.add(key);
    }
    appendLines(this.path, runs.map(([key, run]) => lineOf(key, run)).join(''));
  }

  /**
   * The same lines whatever the order in which runs were done. Runs of other sweeps (fewer bins, another code or log) are kept
   * for a sweep that asks for them again, until there are more than `MOST_KEPT` in all: then they go.
   */
  rewrite(): void {
    if (this.runs.size > this.most)
      for (const key of [...this.runs.keys()]) if (!this.asked.has(key)) this.runs.delete(key);
    const keys = [...this.runs.keys()].sort();
    writeWhole(this.path, HEADER + keys.map((key) => lineOf(key, this.runs.get(key)!)).join(''));
  }

  private read(line: string): void {
    let cells: unknown;
    try {
      cells = JSON.parse(line);
    } catch {
      return;
    }
    if (!Array.isArray(cells) || typeof cells[0] !== 'string') return;
    const [key, why, ...numbers] = cells;
    if (numbers.length === 0) this.runs.set(key, { numbers: null, why });
    else if (numbers.length === WIDTH)
      this.runs.set(key, { numbers: numbers.map((one: number | null) => one ?? Number.NaN), why });
  }
}

function lineOf(key: string, { numbers, why }: FinishedRun): string {
  // JSON writes NaN as null and a double so that it reads back the same.
  return `${JSON.stringify([key, why, ...(numbers ?? [])])}\n`;
}
