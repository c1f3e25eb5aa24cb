import { resolve } from 'node:path';
import { InputError } from '../base/errors.ts';
import type { Season } from './season.ts';
import { buildSeason } from './yaml/build-season.ts';
import { checkFiles } from './yaml/check-files.ts';
import { checkSeason } from './yaml/check-season.ts';
import { readDocument } from './yaml/document.ts';
import type { Draft } from './yaml/draft.ts';
import { reportIssues } from './yaml/issues.ts';
import { currencyOf, type SeasonText, seasonSchema } from './yaml/season-schema.ts';
import { readSource } from './yaml/source.ts';

/**
 * Reads `<folder>/season.yaml` and checks it whole.
 *
 * @param folder  the season folder; relative paths start from the working directory
 * @returns       the season in SI units and UTC, every default filled in, every file pattern matched
 * @throws        InputError with all problems, each with line and column; the codes are in yaml/codes.ts
 */
export async function readSeason(folder: string): Promise<Season> {
  const root = resolve(folder);
  const { data, firstKey, problems } = readDocument(await readSource(root));
  const { report } = problems;
  if (data.format !== undefined && firstKey !== 'format') {
    report('SEASON_FORMAT', ['format'], `stands below ${firstKey}; it must be the first key of the file.`, 'key');
  }
  const currency = currencyOf(data);
  const issues = seasonSchema(currency).safeParse(data).error?.issues ?? [];
  const check = { report, currency, bad: reportIssues(issues, data, report) };
  const draft = data as Draft<SeasonText>;
  checkSeason(draft, check);
  const paths = await checkFiles(draft, root, check);
  const found = problems.list();
  if (found.length > 0) throw new InputError(found);
  const matches = paths.map((some, i) => ({ paths: some, at: problems.place(['files', i, 'path']) }));
  const bound = (['starts', 'ends'] as const).find((key) => draft[key] !== undefined);
  const boundsAt = bound === undefined ? null : problems.place([bound]);
  return buildSeason(data as SeasonText, { folder: root, currency, matches, boundsAt });
}
