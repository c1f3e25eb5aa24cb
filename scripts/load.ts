import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Command } from 'commander';
import { formatProblem, InputError } from '../src/base/errors.ts';
import { loadSeason } from '../src/season/load-season.ts';
import { readSeason } from '../src/season/read-season.ts';
import { replaceFolder } from '../src/season/replace-folder.ts';
import { rejectsCsv, writeTables } from '../src/season/write-tables.ts';

const command = new Command('load')
  .description('Read a season folder into tables: data/*.arrow (SI units, UTC) and rejects.csv, whole or not at all.')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--out <dir>', 'folder to write (default: loaded/ in the season folder)')
  .addHelpText('after', '\nExit status: 0 written; 1 the input is at fault (listed on stderr); 2 anything unexpected.')
  .exitOverride();

async function main(): Promise<number> {
  try {
    command.parse();
  } catch (error) {
    return (error as { exitCode?: number }).exitCode === 0 ? 0 : 1;
  }
  const folder = resolve(command.args[0]);
  const out = resolve(command.opts<{ out?: string }>().out ?? join(folder, 'loaded'));
  const season = await readSeason(folder);
  const loaded = await loadSeason(season, (text) => console.error(text));
  await replaceFolder(out, ['data', 'rejects.csv'], (building) => {
    writeTables(loaded, join(building, 'data'));
    writeFileSync(join(building, 'rejects.csv'), rejectsCsv(loaded.load.rejects));
  });
  const { rows, cells, missing, rejected, outside } = loaded.load.totals;
  console.log(`${rows} rows, ${cells} cells: ${missing} missing, ${rejected} rejected, ${outside} outside the season.`);
  console.log(`Written to ${out}`);
  return 0;
}

main().then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    if (error instanceof InputError) {
      for (const problem of error.problems) console.error(formatProblem(problem));
      process.exitCode = 1;
      return;
    }
    console.error(error);
    process.exitCode = 2;
  },
);
