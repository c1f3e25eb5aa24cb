import { stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { errorText } from '../../src/base/error-text.ts';
import { formatProblem, InputError, type Problem } from '../../src/base/errors.ts';
import type { ClientLine } from '../../src/notebook/year-end/client-line.ts';
import type { FailedClient } from '../../src/notebook/year-end/clients-page.ts';
import type { InputFile } from '../../src/report/page.ts';
import { assertSeasonFolder } from '../../src/season/yaml/source.ts';
import { UsageError } from '../command-line.ts';
import { assertReplaceable } from '../folder/replace-folder.ts';
import { clientReport } from './client-report.ts';
import { clientsSummary, SUMMARY_FOLDER } from './clients-summary.ts';
import type { YearEndWishes } from './wishes.ts';

export interface YearEndJob {
  /** season folders as given */
  seasons: readonly string[];
  wishes: YearEndWishes;
  generatedAtMs: number;
  say: (line: string) => void;
}

export interface YearEndOutcome {
  /** folders of the reports that were made */
  reports: string[];
  /** folder of the consultant's summary; null where one farm was asked for */
  summary: string | null;
  /** clients of whom nothing was written, and why */
  failed: FailedClient[];
  /** what broke in what was written, each a line */
  failures: string[];
}

/**
 * The report of one farm, or of each of a consultant's and a summary across them. A client that fails takes no other with it;
 * clients are worked out one after the other, and nothing of one is at hand while another's is made.
 *
 * @throws UsageError where the command line cannot be followed, InputError where the one farm's files have problems
 */
export async function runYearEnd({ seasons, wishes, generatedAtMs, say }: YearEndJob): Promise<YearEndOutcome> {
  const { folders, skipped } = await foldersOf(seasons);
  if (folders.length > 0) for (const one of skipped) say(`Skip     ${one}: no folder`);
  if (folders.length === 0) throw await noFolder(skipped);
  const single = folders.length === 1 && seasons.length === 1;
  const outs = outsOf(folders, wishes.out, single);
  const summary = single ? null : summaryFolder(folders, outs, wishes.summary);
  if (summary !== null) await assertReplaceable(summary, folders[0], SUMMARY_FOLDER);
  const out: YearEndOutcome = { reports: [], summary, failed: [], failures: [] };
  const lines: ClientLine[] = [];
  const inputs: InputFile[] = [];
  for (const [i, folder] of folders.entries()) {
    const client = basename(folder);
    if (!single) say(`Client   ${client}`);
    const previous = single ? wishes.previous : await ofClient(wishes.previous, client, say);
    const job = { folder, out: outs[i], wishes: { ...wishes, previous }, generatedAtMs, say };
    try {
      const done = await clientReport(job);
      out.reports.push(done.out);
      out.failures.push(...done.failures.map((text) => (single ? text : `${client}: ${text}`)));
      lines.push(done.line);
      inputs.push(...done.inputs.map((one) => ({ ...one, path: `${client}/${one.path}` })));
    } catch (error) {
      if (single) throw error;
      const problems = error instanceof InputError ? error.problems.map(formatProblem) : [faultText(error)];
      out.failed.push({ client, problems });
    }
  }
  if (summary !== null) {
    const command = `npm run year-end -- ${seasons.join(' ')}`;
    const { preparedBy, units: system } = wishes;
    try {
      out.failures.push(
        ...(await clientsSummary({
          out: summary,
          lines,
          failed: out.failed,
          inputs,
          command,
          preparedBy,
          system,
          generatedAtMs,
        })),
      );
      say(`Write    ${summary}`);
    } catch (error) {
      // The clients' reports stand: what keeps the summary from being written is told beside them.
      if (!(error instanceof InputError)) throw error;
      out.summary = null;
      out.failures.push(...error.problems.map(formatProblem));
    }
  }
  return out;
}

const refuse = (message: string, code = 'YEAR_END'): UsageError => new UsageError([{ code, message }]);

function faultText(error: unknown): string {
  return `a fault of the kit: ${errorText(error)}`;
}

/** Folders among what a shell's pattern gave; a plain file beside the clients is no client. */
async function foldersOf(seasons: readonly string[]): Promise<{ folders: string[]; skipped: string[] }> {
  const folders: string[] = [];
  const skipped: string[] = [];
  for (const season of seasons) {
    const full = resolve(season);
    const is = await stat(full).catch(() => null);
    // One that is not there is told by the reading of its season.yaml.
    if (is !== null && !is.isDirectory()) skipped.push(season);
    else if (!folders.includes(full)) folders.push(full);
  }
  return { folders, skipped };
}

/** Files and nothing else, each told as what it is. */
async function noFolder(files: readonly string[]): Promise<InputError> {
  const told = await Promise.allSettled([...new Set(files)].map((file) => assertSeasonFolder(resolve(file))));
  return new InputError(told.flatMap((one) => (one.status === 'rejected' ? one.reason.problems : [])));
}

function outsOf(folders: readonly string[], out: string | null, single: boolean): string[] {
  const beside = folders.map((folder) => join(folder, 'year-end'));
  if (single) return out === null ? beside : [resolve(out)];
  const names = folders.map((folder) => basename(folder));
  const twice = names.filter((name, i) => names.indexOf(name) !== i);
  if (twice.length > 0) {
    const problems = [...new Set(twice)].map(
      (name): Problem => ({
        code: 'OUT_FOLDER',
        message: `two clients’ folders are named ${name}: the summary could not tell them apart, and under --out one report would replace the other. Rename one.`,
      }),
    );
    throw new UsageError(problems);
  }
  return out === null ? beside : names.map((name) => join(resolve(out), name));
}

/** Where the consultant's summary goes: never into a client's folder, or a folder that a client's report stands in. */
function summaryFolder(folders: readonly string[], outs: readonly string[], stated: string | null): string {
  const parent = dirname(folders[0]);
  const summary = stated === null ? join(dirname(parent), `${basename(parent)}-year-end`) : resolve(stated);
  const within = [...folders, ...outs].find((folder) => summary === folder || summary.startsWith(`${folder}/`));
  if (within !== undefined) {
    throw refuse(
      `the consultant’s summary would stand in ${within}, which is a client’s. Give --summary a folder apart from the clients’.`,
      'SUMMARY_FOLDER',
    );
  }
  return summary;
}

/** A client's season before, under the folder that --previous names; none where there is no folder of that name. */
async function ofClient(previous: string | null, client: string, say: (line: string) => void): Promise<string | null> {
  if (previous === null) return null;
  const of = join(previous, client);
  if ((await stat(of).catch(() => null)) !== null) return of;
  say(`Before   ${client}: no ${of}`);
  return null;
}
