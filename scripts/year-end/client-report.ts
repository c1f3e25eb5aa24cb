import { mkdir, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import yearEnd from '../../notebooks/year-end.ts';
import { besidePrevious } from '../../src/analysis/previous/beside-previous.ts';
import { seasonNumbers } from '../../src/analysis/previous/previous-shape.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import { summaryJsonSchema } from '../../src/analysis/summary-shape.ts';
import { type ClientLine, clientLine } from '../../src/notebook/year-end/client-line.ts';
import { renderDocument } from '../../src/report/html/document.ts';
import type { InputFile } from '../../src/report/page.ts';
import { assertSeasonFolder } from '../../src/season/yaml/source.ts';
import type { OwnFolder } from '../folder/own-folder.ts';
import { assertReplaceable, replaceFolder } from '../folder/replace-folder.ts';
import { commandSaid, madeBeside, madeBy, unitsOf } from '../review/made-by.ts';
import { pdfOf } from '../review/pdf-of.ts';
import { previousSeason } from '../review/previous-season.ts';
import { tablesOf } from '../review/run-review.ts';
import { brokenParts, workOut } from '../review/work-out.ts';
import type { YearEndWishes } from './wishes.ts';

/** What stands in the folder of a report. */
const REPORT_FOLDER: OwnFolder = {
  marks: ['year-end.html', 'summary.json'],
  own: /^(year-end\.(html|pdf)|summary(\.schema)?\.json|tables)$/,
};

export interface ClientOutcome {
  folder: string;
  out: string;
  /** what the consultant's summary tells of this client */
  line: ClientLine;
  /** its files, for the summary's account of what it was made from */
  inputs: readonly InputFile[];
  /** what broke in an otherwise made report, each a line */
  failures: string[];
}

export interface ClientJob {
  /** absolute */
  folder: string;
  /** absolute */
  out: string;
  wishes: YearEndWishes;
  generatedAtMs: number;
  say: (line: string) => void;
}

/**
 * One farm's report, written whole or not at all.
 *
 * @throws InputError with every problem of the season's files; then nothing is written
 */
export async function clientReport({ folder, out, wishes, generatedAtMs, say }: ClientJob): Promise<ClientOutcome> {
  await assertSeasonFolder(folder);
  await assertReplaceable(out, folder, REPORT_FOLDER);
  const before = wishes.previous === null ? null : await previousSeason(wishes.previous, say, wishes.keep);
  const worked = await workOut(folder, { models: wishes.models, keep: wishes.keep, say });
  const { loaded, review } = worked;
  const summary = summaryOf(loaded, review);
  const page = yearEnd.page({
    loaded,
    review,
    units: unitsOf(loaded),
    made: {
      ...madeBeside(
        madeBy(loaded, commandSaid('year-end', folder, wishes.models, wishes.previous), generatedAtMs),
        before?.inputs ?? [],
      ),
      farm: wishes.preparedFor ?? loaded.season.preparedFor,
    },
    beside: before === null ? undefined : besidePrevious(seasonNumbers(summary), before.numbers),
    stated: { preparedFor: wishes.preparedFor, preparedBy: wishes.preparedBy, date: wishes.date },
  });
  const rendered = renderDocument(page, [{ file: page.file, title: page.title }]);
  const tables = tablesOf(page);
  const printed = await pdfOf([page], wishes.pdf);
  say(`Draw     ${page.sections.length} sections`);
  await replaceFolder(out, REPORT_FOLDER, async (fresh) => {
    await writeFile(join(fresh, 'year-end.html'), rendered.html);
    if (printed.pdf !== null) await writeFile(join(fresh, 'year-end.pdf'), printed.pdf);
    await mkdir(join(fresh, 'tables'), { recursive: true });
    for (const table of tables.files) await writeFile(join(fresh, 'tables', `${table.name}.csv`), table.csv);
    await writeFile(join(fresh, 'summary.json'), jsonText(summary));
    await writeFile(join(fresh, 'summary.schema.json'), jsonText(summaryJsonSchema()));
  });
  say(`Write    ${out}`);
  const failures = [...brokenParts(worked), ...rendered.failures, ...tables.failures, ...printed.failures];
  const line = clientLine(loaded, review, basename(folder), failures, wishes.units);
  return { folder, out, line, inputs: page.madeBy.inputs, failures };
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
