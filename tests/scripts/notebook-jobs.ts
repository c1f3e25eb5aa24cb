// Draws notebooks for notebook.test.ts in one process started with tsx, as the command is: a start of its own for each would cost seconds.

import { runNotebook } from '../../scripts/notebook/run-notebook.ts';
import { InputError } from '../../src/base/errors.ts';

export interface NotebookJob {
  notebook: string;
  season: string;
  out?: string;
}

export interface NotebookDone {
  /** the file written; null: nothing was */
  out: string | null;
  stages: string[];
  failures: string[];
  /** bad input as its message, anything else with its stack */
  problems: string | null;
}

process.on('message', async ({ notebook, season, out }: NotebookJob) => {
  const stages: string[] = [];
  const options = { notebook, seasonFolder: season, out: out ?? null, models: false, generatedAtMs: 1_735_689_600_000 };
  try {
    const done = await runNotebook({ ...options, onStage: (line) => stages.push(line) });
    process.send?.({ ...done, stages, problems: null } satisfies NotebookDone);
  } catch (error) {
    const problems = error instanceof InputError ? error.message : String((error as Error).stack);
    process.send?.({ out: null, failures: [], stages, problems } satisfies NotebookDone);
  }
});
