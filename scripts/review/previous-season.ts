import { readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { PREVIOUS_SHAPE, type SeasonNumbers, seasonNumbers } from '../../src/analysis/previous/previous-shape.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import { UsageError } from '../command-line.ts';
import { workOut } from './work-out.ts';

/**
 * The season that is set beside this one: a season folder, which is worked out anew, or a review's summary.json (or the folder that
 * it stands in).
 *
 * @param keep  as `workedOut`
 * @throws UsageError where there is neither, or the file is no summary.json
 */
export async function previousSeason(path: string, say: (line: string) => void, keep = false): Promise<SeasonNumbers> {
  const full = resolve(path);
  const is = await stat(full).catch(() => null);
  if (is === null) throw new UsageError([problem(path, 'is not there')]);
  if (is.isFile()) return seasonNumbers(await readSummary(full, path));
  const has = async (name: string) => (await stat(join(full, name)).catch(() => null))?.isFile() === true;
  if (await has('season.yaml')) {
    say(`Before   ${path}`);
    const { loaded, review } = await workOut(full, { models: false, keep, say });
    return seasonNumbers(summaryOf(loaded, review));
  }
  if (await has('summary.json')) return seasonNumbers(await readSummary(join(full, 'summary.json'), path));
  throw new UsageError([problem(path, 'holds neither season.yaml nor summary.json')]);
}

const problem = (path: string, found: string) => ({
  code: 'PREVIOUS',
  message: `--previous ${path} ${found}. Give the folder of the season before, or the summary.json of its review.`,
});

async function readSummary(file: string, path: string) {
  const text = await readFile(file, 'utf8');
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new UsageError([problem(path, 'is no JSON')]);
  }
  const read = PREVIOUS_SHAPE.safeParse(data);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  throw new UsageError([problem(path, `is no summary.json of a review (${first.path.join('.')}: ${first.message})`)]);
}
