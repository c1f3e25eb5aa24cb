import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Command } from 'commander';
import { loadSeason } from '../src/season/load-season.ts';
import { readSeason } from '../src/season/read-season.ts';
import { rejectsCsv, writeTables } from '../src/season/write-tables.ts';
import { assertReplaceable, replaceFolder } from './folder/replace-folder.ts';
import { EXIT, tellError } from './review/command.ts';

const LOADED_FOLDER = { marks: ['rejects.csv'], own: /^(data|rejects\.csv)$/ };

const command = new Command('load')
  .description('Read a season folder into tables: data/*.arrow (SI units, UTC) and rejects.csv, whole or not at all.')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--out <dir>', 'folder to write (default: loaded/ in the season folder)')
  .addHelpText(
    'after',
    "\nExit status: 0 written; 1 the season's files have problems (listed, nothing written); 2 wrong command line; 4 a fault of the kit.\n\nExample: npm run load -- my-season",
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : EXIT.usage));

async function main(): Promise<void> {
  command.parse();
  const folder = resolve(command.args[0]);
  const out = resolve(command.opts<{ out?: string }>().out ?? join(folder, 'loaded'));
  await assertReplaceable(out, folder, LOADED_FOLDER);
  const season = await readSeason(folder);
  const loaded = await loadSeason(season, (text) => console.error(text));
  await replaceFolder(out, (building) => {
    writeTables(loaded, join(building, 'data'));
    writeFileSync(join(building, 'rejects.csv'), rejectsCsv(loaded.load.rejects));
  });
  const { rows, cells, missing, rejected, outside } = loaded.load.totals;
  console.log(`${rows} rows, ${cells} cells: ${missing} missing, ${rejected} rejected, ${outside} outside the season.`);
  console.log(`Written to ${out}`);
}

await main().catch((error: unknown) => {
  process.exitCode = tellError(error, (line) => console.error(line));
});
