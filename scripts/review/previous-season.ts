import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { PREVIOUS_SHAPE, type SeasonNumbers, seasonNumbers } from '../../src/analysis/previous/previous-shape.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import type { InputFile } from '../../src/report/page.ts';
import { UsageError } from '../command-line.ts';
import { inputsOf } from './made-by.ts';
import { workOut } from './work-out.ts';

/** The season before, as far as it is set beside this one. */
export interface PreviousSeason {
  numbers: SeasonNumbers;
  /** what the numbers were made from, behind the folder's name */
  inputs: readonly InputFile[];
}

/**
 * The season that is set beside this one: a season folder, which is worked out anew, or a review's summary.json (or the folder that
 * it stands in).
 *
 * @param keep  as `workedOut`
 * @throws UsageError where there is neither, or the file is no summary.json
 */
export async function previousSeason(path: string, say: (line: string) => void, keep = false): Promise<PreviousSeason> {
  const full = resolve(path);
  const is = await stat(full).catch(() => null);
  if (is === null) throw new UsageError([problem(path, 'is not there')]);
  if (basename(full) === 'season.yaml') throw new UsageError([problem(path, 'is a file of a season folder')]);
  if (is.isFile()) return readSummary(full, path);
  const has = async (name: string) => (await stat(join(full, name)).catch(() => null))?.isFile() === true;
  if (await has('season.yaml')) {
    say(`Before   ${path}`);
    const { loaded, review } = await workOut(full, { models: false, keep, say });
    const name = basename(full);
    const inputs = inputsOf(loaded).map((one) => ({ ...one, path: `${name}/${one.path}` }));
    return { numbers: seasonNumbers(summaryOf(loaded, review)), inputs };
  }
  if (await has('summary.json')) return readSummary(join(full, 'summary.json'), path);
  throw new UsageError([problem(path, 'holds neither season.yaml nor summary.json')]);
}

const problem = (path: string, found: string) => ({
  code: 'PREVIOUS',
  message: `--previous ${path} ${found}. Give the folder of the season before, or the summary.json of its review.`,
});

async function readSummary(file: string, path: string): Promise<PreviousSeason> {
  const bytes = await readFile(file);
  const text = bytes.toString('utf8');
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new UsageError([problem(path, 'is no JSON')]);
  }
  const read = PREVIOUS_SHAPE.safeParse(data);
  if (read.success) {
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const name = join(basename(dirname(file)), basename(file));
    const input = { path: name, sha256, bytes: bytes.length, rows: null, firstMs: null, lastMs: null };
    return { numbers: seasonNumbers(read.data), inputs: [input] };
  }
  const [first] = read.error.issues;
  throw new UsageError([problem(path, `is no summary.json of a review (${first.path.join('.')}: ${first.message})`)]);
}
