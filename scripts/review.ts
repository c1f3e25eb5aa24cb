import { Command, Option } from 'commander';
import { leave, tellError, UsageError } from './command-line.ts';
import { PAPERS } from './pdf/papers.ts';

const program = new Command('review')
  .description('Review a season folder: read its logs, work out what the fans did and cost, write the pages.')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--out <dir>', 'where the review goes (default: review/ in the season folder)')
  .option('--no-model', 'leave out the bins’ models and what other ways to run the fan would have come to')
  .option('--sweep', 'first run every rule in each year of the history weather, for what it costs from year to year')
  .option(
    '--previous <season>',
    'season folder or summary.json of the season before, to set beside in the year-end report',
  )
  .option('--fresh', 'read and work out everything anew, whatever is kept of the season')
  .option('--xlsx', 'write the tables of the pages as one workbook too, season.xlsx')
  .option('--parquet', 'write the loaded tables as Parquet files too, data/*.parquet')
  .option(
    '--page <notebook>',
    'a notebook of your own as one more page; may stand more than once',
    (path: string, before: readonly string[] = []) => [...before, path],
  )
  .option('--pdf', 'print the year-end report as year-end.pdf too, with an installed Chromium')
  .addOption(new Option('--paper <size>', 'paper of the PDF').choices(PAPERS).default('letter'))
  .option('--chromium <path>', 'the Chromium that prints (default: CHROMIUM_PATH, then the usual places)')
  .addHelpText(
    'after',
    `
Writes index.html and a page per notebook, year-end.html among them (one printable document;
npm run year-end makes it alone, with a cover of your own), summary.json with its schema, tables/*.csv,
data/*.arrow and rejects.csv, whole or not at all; an earlier review is replaced.
What is worked out is kept in the season's .cache folder; while no file of it and nothing in the kit
changes, the next review takes it from there, in seconds. --fresh does not, and keeps nothing.
--xlsx: season.xlsx beside them, an index and a sheet for each table: names in its first
row, units in its second, real dates by the clock of the site and real numbers at the
digits of the pages, intervals and the reasons of missing numbers in columns of their own.
--parquet: data/*.parquet beside data/*.arrow, the same columns for engines that read no Arrow files.
--sweep: sweep/ in the season folder, as npm run sweep writes it, without the searches for the best in hindsight; one of
the files and the kit as they are that has every bin, rule and year is taken as it stands. What an earlier one held beyond
that, searches among it, is run again with it. npm run sweep has the searches and what else may be moved.
SOURCE_DATE_EPOCH sets the time that pages print.

Exit status: 0 whole; 1 the season's files have problems, or the disk takes no more (listed, nothing written);
2 wrong command line; 3 written, but a bin, page or section broke; 4 a fault of the kit.

Example: npm run review -- data-samples/sorrel-fork --xlsx --out /tmp/review`,
  )
  .exitOverride(leave)
  .parse();

const [folder] = program.args;
interface Options {
  out?: string;
  model: boolean;
  fresh?: true;
  xlsx?: true;
  parquet?: true;
  sweep?: true;
  page?: readonly string[];
  previous?: string;
  pdf?: true;
  paper: (typeof PAPERS)[number];
  chromium?: string;
}

const { out, model, fresh, xlsx, parquet, sweep, previous, pdf, page = [], paper, chromium } = program.opts<Options>();
if (sweep === true && !model) {
  const message = '--sweep runs by the bins’ models, which --no-model leaves out. Leave one of them away.';
  const told = tellError(new UsageError([{ code: 'REVIEW_OPTION', message }]), (line) => {
    process.stderr.write(`${line}\n`);
  });
  process.exit(told);
}
// Loaded once the command line is known to be right, as it takes seconds.
const { reviewCommand } = await import('./review/command.ts');
process.exitCode = await reviewCommand(folder, {
  out: out ?? null,
  models: model,
  keep: fresh !== true,
  workbook: xlsx,
  parquet,
  sweep,
  own: page,
  previous: previous ?? null,
  pdf: pdf === true ? { paper, chromium: chromium ?? null } : null,
});
