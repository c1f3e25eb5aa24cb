import { Command, Option } from 'commander';
import { EXIT, generatedAtMs, leave, tellError, UsageError } from './command-line.ts';
import { findChromium } from './pdf/find-chromium.ts';
import { PAPERS, type Paper } from './pdf/papers.ts';
import { coverDate } from './year-end/wishes.ts';

const program = new Command('year-end')
  .description('Make the year-end report of a farm, or of each of a consultant’s clients and a summary across them.')
  .argument('<season-folder...>', 'one season folder, or one of each client')
  .option(
    '--out <dir>',
    'where the report goes (default: year-end/ in the season folder); of several: a folder of each client in it',
  )
  .option(
    '--previous <season>',
    'season folder or summary.json to set beside; of several: a folder that holds one of each client’s name',
  )
  .option('--prepared-for <name>', 'for whom, in place of prepared_for of season.yaml; of one farm only')
  .option('--prepared-by <name>', 'by whom, in place of prepared_by of season.yaml')
  .option('--date <day>', 'date on the cover, e.g. 2025-05-20; without it the cover bears the day of making alone')
  .option('--pdf', 'print the report as year-end.pdf too, with an installed Chromium')
  .addOption(new Option('--paper <size>', 'paper of the PDF').choices(PAPERS).default('letter'))
  .option('--chromium <path>', 'the Chromium that prints (default: CHROMIUM_PATH, then the usual places)')
  .option(
    '--summary <dir>',
    'where the consultant’s summary goes (default: beside the folder of the clients, <clients>-year-end)',
  )
  .addOption(new Option('--units <system>', 'units of the consultant’s summary').choices(['us', 'si']).default('us'))
  .option('--no-model', 'leave out the bins’ models and what other ways to run the fan would have come to')
  .option('--fresh', 'read and work out everything anew, whatever is kept of a season in its .cache folder')
  .addHelpText(
    'after',
    `
Writes year-end.html (one printable document: cover, contents, summary, farm, data, grain,
bins, energy in the order of an on-farm energy audit, recommendations, method, sources),
year-end.pdf with --pdf, summary.json with its schema and tables/*.csv, whole or not at all.
Of several clients each gets its own folder, which holds nothing of another; the summary
across them (index.html, clients.json, tables/*.csv) is the consultant’s and stands apart.
A client whose files have problems is listed, the others are made.
SOURCE_DATE_EPOCH sets the time of making that reports and PDFs bear.

Exit status: 0 whole; 1 nothing was written, all problems are listed; 2 wrong command line;
3 written, but a client, a bin, a part or the PDF could not be made; 4 a fault of the kit.

Examples:
  npm run year-end -- data-samples/sorrel-fork --previous data-samples/sorrel-fork-2023 --pdf --out /tmp/year-end
  npm run year-end -- clients/* --prepared-by "A. Consultant" --date 2025-05-20 --pdf`,
  )
  .exitOverride(leave)
  .parse();

interface Options {
  out?: string;
  previous?: string;
  preparedFor?: string;
  preparedBy?: string;
  date?: string;
  pdf?: true;
  paper: Paper;
  chromium?: string;
  summary?: string;
  units: 'us' | 'si';
  model: boolean;
  fresh?: true;
}

const tell = (line: string) => process.stderr.write(`${line}\n`);
process.exitCode = await main(program.args, program.opts<Options>());

async function main(seasons: readonly string[], options: Options): Promise<number> {
  try {
    // A named browser that is none is told before the work, not after.
    if (options.pdf) findChromium(options.chromium ?? null);
    if (seasons.length > 1 && options.preparedFor !== undefined) {
      const message =
        '--prepared-for would put one client’s name on every report. State prepared_for in each season.yaml.';
      throw new UsageError([{ code: 'PREPARED_FOR', message }]);
    }
    // Loaded once the command line is known to be right, as it takes seconds.
    const { runYearEnd } = await import('./year-end/run-year-end.ts');
    const done = await runYearEnd({
      seasons,
      wishes: {
        out: options.out ?? null,
        summary: options.summary ?? null,
        previous: options.previous ?? null,
        models: options.model,
        keep: options.fresh !== true,
        preparedFor: options.preparedFor ?? null,
        preparedBy: options.preparedBy ?? null,
        date: options.date === undefined ? null : coverDate(options.date),
        pdf: options.pdf === true ? { paper: options.paper, chromium: options.chromium ?? null } : null,
        units: options.units,
      },
      generatedAtMs: generatedAtMs(process.env.SOURCE_DATE_EPOCH, Date.now()),
      say: tell,
    });
    for (const { client, problems } of done.failed) {
      tell(
        `${client}: ${problems.length === 1 ? 'one problem' : `${problems.length} problems`}; nothing of it was written.`,
      );
      for (const problem of problems) tell(`  ${problem}`);
    }
    for (const failure of done.failures) tell(`Could not be made: ${failure}`);
    for (const report of done.reports) process.stdout.write(`Open ${report}/year-end.html\n`);
    if (done.summary !== null) process.stdout.write(`Open ${done.summary}/index.html\n`);
    if (done.reports.length === 0) return EXIT.badInput;
    return done.failed.length > 0 || done.failures.length > 0 ? EXIT.partly : EXIT.whole;
  } catch (error) {
    return tellError(error, tell);
  }
}
