import { Command } from 'commander';
import { leave, tellError } from './command-line.ts';

const command = new Command('load')
  .description('Read a season folder into tables: data/*.arrow (SI units, UTC) and rejects.csv, whole or not at all.')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--out <dir>', 'folder to write (default: loaded/ in the season folder)')
  .addHelpText(
    'after',
    "\nExit status: 0 written; 1 the season's files have problems, or the disk takes no more (listed, nothing written); 2 wrong command line; 4 a fault of the kit.\n\nExample: npm run load -- my-season",
  )
  .exitOverride(leave);

const tell = (line: string) => process.stderr.write(`${line}\n`);
try {
  command.parse();
  // Loaded once the command line is known to be right, as it takes seconds.
  const { loadFolder } = await import('./load/load-folder.ts');
  const { out, totals } = await loadFolder(command.args[0], command.opts<{ out?: string }>().out ?? null, tell);
  const { rows, cells, missing, rejected, outside } = totals;
  process.stdout.write(
    `${rows} rows, ${cells} cells: ${missing} missing, ${rejected} rejected, ${outside} outside the season.\nWritten to ${out}\n`,
  );
} catch (error) {
  process.exitCode = tellError(error, tell);
}
