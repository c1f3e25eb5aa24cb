import { mkdir, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import binOrRule from '../../notebooks/bin-or-rule.ts';
import binsCompared from '../../notebooks/bins-compared.ts';
import condition from '../../notebooks/condition.ts';
import dataQuality from '../../notebooks/data-quality.ts';
import fanEnergy from '../../notebooks/fan-energy.ts';
import fronts from '../../notebooks/fronts.ts';
import methods from '../../notebooks/methods.ts';
import moisture from '../../notebooks/moisture.ts';
import overview from '../../notebooks/overview.ts';
import strategies from '../../notebooks/strategies.ts';
import yearEnd from '../../notebooks/year-end.ts';
import { besidePrevious } from '../../src/analysis/previous/beside-previous.ts';
import { seasonNumbers } from '../../src/analysis/previous/previous-shape.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import { summaryJsonSchema } from '../../src/analysis/summary-shape.ts';
import { errorText } from '../../src/base/error-text.ts';
import { zoneOf } from '../../src/base/zone.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import type { Page } from '../../src/report/page.ts';
import { namedApart, pageTables, type TableFile } from '../../src/report/page-tables.ts';
import type { LoadedSeason, LoadReport } from '../../src/season/loaded.ts';
import { largestKind } from '../../src/season/readers/reason-kind.ts';
import { rejectsCsv, writeTables } from '../../src/season/write-tables.ts';
import { assertSeasonFolder } from '../../src/season/yaml/source.ts';
import type { OwnFolder } from '../folder/own-folder.ts';
import { assertReplaceable, replaceFolder } from '../folder/replace-folder.ts';
import { seasonOfFiles } from '../kept/season-of-files.ts';
import { workedOut } from '../kept/worked-out.ts';
import { findChromium } from '../pdf/find-chromium.ts';
import { SWEEP_FOLDER } from '../sweep/sweep-folder.ts';
import { hindsightCsv } from './hindsight-csv.ts';
import { commandSaid, madeBeside, madeBy, unitsOf } from './made-by.ts';
import { ownNotebooks } from './own-notebooks.ts';
import { type PdfWish, pdfOf } from './pdf-of.ts';
import { previousSeason } from './previous-season.ts';
import { sweepBeside } from './sweep-beside.ts';
import { workbookBytes } from './workbook-bytes.ts';

/** The pages of a review, in the order of their links. */
export const NOTEBOOKS = [
  overview,
  fanEnergy,
  moisture,
  fronts,
  binsCompared,
  strategies,
  binOrRule,
  condition,
  dataQuality,
  methods,
  yearEnd,
];

/** The one page that sets the season before beside this one. */
const TELLS_OF_BEFORE = 'year-end';

/** What stands in a review folder. */
const REVIEW_FOLDER: OwnFolder = {
  marks: ['index.html', 'summary.json'],
  own: /^(.+\.html|summary(\.schema)?\.json|rejects\.csv|tables|data|season\.xlsx|year-end\.pdf)$/,
};

export interface ReviewOptions {
  seasonFolder: string;
  /** null: `review` in the season folder */
  out: string | null;
  /** fit the bins' beds and run them in other ways; false */
  models?: boolean;
  /** take what is kept of the season where none of its files changed since, and keep what is worked out; false */
  keep?: boolean;
  /** write the tables as a workbook too, `season.xlsx`; false */
  workbook?: boolean;
  /** write the loaded tables as Parquet files too, `data/*.parquet`; false */
  parquet?: boolean;
  /** run a sweep into the season's `sweep/` first where none of its files as they are stands there; false */
  sweep?: boolean;
  /** season folder or summary.json to set beside; none */
  previous?: string | null;
  /** paths of one's own notebooks, pages beside the kit's; none */
  own?: readonly string[];
  /** print the year-end report too, `year-end.pdf`; none */
  pdf?: PdfWish | null;
  /** what pages print as the time of making, ms UTC */
  generatedAtMs: number;
  /** told one line a stage */
  onStage: (line: string) => void;
}

export interface ReviewOutcome {
  out: string;
  pages: number;
  /** bins, pages and sections that broke, each a line; empty when all is whole */
  failures: string[];
}

/**
 * Season folder in, review folder out, whole or not at all.
 *
 * @throws InputError with every problem of the season's files; then nothing is written
 */
export async function runReview(options: ReviewOptions): Promise<ReviewOutcome> {
  const folder = resolve(options.seasonFolder);
  const out = options.out === null ? join(folder, 'review') : resolve(options.out);
  await assertSeasonFolder(folder);
  await assertReplaceable(out, folder, REVIEW_FOLDER);
  const { models, keep, sweep = false, onStage: say } = options;
  if (sweep) await assertReplaceable(join(folder, 'sweep'), folder, SWEEP_FOLDER);
  // A named browser that is none is told before the work, not after.
  if (options.pdf != null) findChromium(options.pdf.chromium);

  const taken = NOTEBOOKS.map(({ id }) => id);
  const own = await ownNotebooks(options.own ?? [], taken);
  const before = options.previous == null ? null : await previousSeason(options.previous, say, options.keep);
  const season = await seasonOfFiles(folder);
  say(`Season   ${season.title}: ${count(season.bins.length, 'bin')}, ${count(season.fans.length, 'fan')}`);
  const onLoaded = ({ load }: LoadedSeason) => {
    const { totals, files } = load;
    say(
      `Load     ${count(files.length, 'file')}, ${count(totals.rows, 'row')}, ${count(totals.rejected, 'cell')} rejected`,
    );
    for (const line of rejectLines(load)) say(line);
  };
  const { loaded, review } = await workedOut(season, { models, keep, onStage: say, onLoaded });
  const { swept, failures: unswept } = await sweepBeside({ loaded, review }, sweep, say);
  const summary = summaryOf(loaded, review);
  const input: NotebookInput = {
    loaded,
    review,
    swept,
    beside: before === null ? undefined : besidePrevious(seasonNumbers(summary), before.numbers),
    units: unitsOf(loaded),
    made: madeBy(loaded, commandSaid('review', folder, models, options.previous), options.generatedAtMs),
  };
  const withBefore = { ...input, made: madeBeside(input.made, before?.inputs ?? []) };
  const pages = NOTEBOOKS.map((notebook) => notebook.page(notebook.id === TELLS_OF_BEFORE ? withBefore : input));
  for (const notebook of own) pages.push(await notebook.page(input));
  const rendered = renderPages(pages);
  const tables = pages.map(tablesOf);
  const tableFiles = namedApart(tables.flatMap((of) => of.files));
  const book = await workbookBytes(tableFiles, season.title, options.workbook);
  const printed = await pdfOf(pages, options.pdf ?? null);
  say(`Draw     ${count(pages.length, 'page')}`);

  await replaceFolder(out, REVIEW_FOLDER, async (fresh) => {
    writeTables(loaded, join(fresh, 'data'), options.parquet);
    await writeFile(join(fresh, 'rejects.csv'), rejectsCsv(loaded.load.rejects));
    for (const page of rendered) await writeFile(join(fresh, page.file), page.html);
    await mkdir(join(fresh, 'tables'), { recursive: true });
    for (const table of tableFiles) await writeFile(join(fresh, 'tables', `${table.name}.csv`), table.csv);
    if (printed.pdf !== null) await writeFile(join(fresh, 'year-end.pdf'), printed.pdf);
    if (book.bytes !== null) await writeFile(join(fresh, 'season.xlsx'), book.bytes);
    const hours = hindsightCsv(review.whatIf ?? [], zoneOf(season.site.timeZone));
    if (hours !== null) await writeFile(join(fresh, 'tables', 'hindsight-hours.csv'), hours);
    await writeFile(join(fresh, 'summary.json'), jsonText(summary));
    await writeFile(join(fresh, 'summary.schema.json'), jsonText(summaryJsonSchema()));
  });
  say(`Write    ${out}`);

  const broken = review.bins.filter((bin) => bin.failure !== null).map((bin) => `bin ${bin.bin.id}: ${bin.failure}`);
  const undrawn = rendered.flatMap((page) => page.failures.map((failure) => `${page.file}: ${failure}`));
  const unwritten = [...tables.flatMap((of) => of.failures), ...book.failures, ...printed.failures];
  return {
    out,
    pages: pages.length,
    failures: [...(review.failures ?? []), ...broken, ...unswept, ...undrawn, ...unwritten],
  };
}

/** The tables of a page; a page whose tables cannot be written keeps neither the others' nor its own page from being made. */
export function tablesOf(page: Page): { files: TableFile[]; failures: string[] } {
  try {
    return { files: pageTables(page), failures: [] };
  } catch (error) {
    const reason = errorText(error);
    return { files: [], failures: [`tables/${page.id}-*.csv: ${reason}`] };
  }
}

/** One line a file that lost cells: how many, and why most of them. */
export function rejectLines({ files, rejects }: LoadReport): string[] {
  return files
    .filter((file) => file.rejected > 0)
    .map((file) => {
      const own = rejects.filter(({ file: path }) => path === file.path);
      const [most] = largestKind(own.map(({ line, reason }) => [line, reason]));
      return `         ${file.path}: ${file.rejected} of ${count(file.cells, 'cell')} rejected${most === undefined ? '' : `, most often: ${most[1]}`} (rejects.csv)`;
    });
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
