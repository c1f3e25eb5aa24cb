import { Command, InvalidArgumentError } from 'commander';
import { EXIT, generatedAtMs, leave, tellError } from './command-line.ts';

interface Options {
  out?: string;
  models?: true;
  watch?: true;
  port?: number;
}

function portOf(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535) throw new InvalidArgumentError('A port is a whole number up to 65535.');
  return port;
}

const program = new Command('notebook')
  .description('Draw one notebook’s page of a season, once or again at every save.')
  .argument('<notebook>', 'a TypeScript file with a notebook, anywhere')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--out <file>', 'where the page goes (default: pages/ in the season folder, by the notebook’s id)')
  .option('--models', 'fit the bins’ models and run other ways first, for notebooks that read review.whatIf')
  .option('--watch', 'serve the page on this machine and draw it anew at every save')
  .option('--port <number>', 'with --watch: the port (default: 7411, or a free one)', portOf)
  .addHelpText(
    'after',
    `
The season is read once and kept in its .cache folder; while no file of it changes, the next page
takes it from there. Remove .cache to have it read anew. Pages are one file each and open offline.

With --watch the page stands at http://127.0.0.1:7411/, for this machine alone. It is drawn anew when
the notebook, a file that it imports or a file of the season is saved. What goes wrong is shown on the
page with file and line, above the last page that could be drawn. Ctrl-C ends it.

SOURCE_DATE_EPOCH sets the time that pages print.

Exit status: 0 whole, or a watch that was ended; 1 the notebook or the season's files have problems
(listed, nothing written); 2 wrong command line; 3 written, but a part of the page broke;
4 a fault of the kit.

Examples: npm run notebook -- notebooks/first-look.ts data-samples/sorrel-fork
          npm run notebook -- ~/my-pages/fans.ts my-season --watch`,
  )
  .exitOverride(leave)
  .parse();

const [notebook, seasonFolder] = program.args;
const { out, models = false, watch = false, port } = program.opts<Options>();
const tell = (line: string) => process.stderr.write(`${line}\n`);
if (watch && out !== undefined)
  program.error('--out writes a file, --watch serves a page: give one of the two.', { exitCode: EXIT.usage });
if (!watch && port !== undefined) program.error('--port goes with --watch.', { exitCode: EXIT.usage });

try {
  const epoch = process.env.SOURCE_DATE_EPOCH;
  if (watch) {
    const stated = epoch === undefined || epoch === '' ? null : generatedAtMs(epoch, 0);
    const { watchNotebook } = await import('./notebook/watch/watch-notebook.ts');
    const watching = await watchNotebook({
      notebook,
      seasonFolder,
      models,
      port: port ?? null,
      generatedAtMs: stated,
      say: tell,
    });
    process.stdout.write(`Open ${watching.url} (Ctrl-C ends it)\n`);
    let ending = false;
    // A terminal's Ctrl-C comes twice through npm: once is enough.
    const end = () => {
      if (!ending) void watching.end().then(() => process.exit(EXIT.whole));
      ending = true;
    };
    process.on('SIGINT', end);
    process.on('SIGTERM', end);
  } else {
    const madeMs = generatedAtMs(epoch, Date.now());
    const { runNotebook } = await import('./notebook/run-notebook.ts');
    const done = await runNotebook({
      notebook,
      seasonFolder,
      out: out ?? null,
      models,
      generatedAtMs: madeMs,
      onStage: tell,
    });
    process.stdout.write(`Open ${done.out}\n`);
    if (done.failures.length > 0) {
      tell(
        `${done.failures.length === 1 ? 'One part' : `${done.failures.length} parts`} could not be made; the page says where:`,
      );
      for (const failure of done.failures) tell(`  ${failure}`);
      process.exitCode = EXIT.partly;
    }
  }
} catch (error) {
  process.exitCode = tellError(error, tell);
}
