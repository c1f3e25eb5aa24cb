import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { rejectsCsv, writeTables } from '../../src/season/write-tables.ts';
import { assertSeasonFolder } from '../../src/season/yaml/source.ts';
import { assertReplaceable, replaceFolder } from '../folder/replace-folder.ts';

const LOADED_FOLDER = { marks: ['rejects.csv'], own: /^(data|rejects\.csv)$/ };

/**
 * A season folder's tables, written whole or not at all.
 *
 * @param given  where they go; null: `loaded` in the season folder
 * @param say    told what is going on, a line at a time
 * @throws       InputError with every problem of the season's files
 */
export async function loadFolder(seasonFolder: string, given: string | null, say: (line: string) => void) {
  const folder = resolve(seasonFolder);
  const out = resolve(given ?? join(folder, 'loaded'));
  await assertSeasonFolder(folder);
  await assertReplaceable(out, folder, LOADED_FOLDER);
  const loaded = await loadSeason(await readSeason(folder), say);
  await replaceFolder(out, LOADED_FOLDER, (building) => {
    writeTables(loaded, join(building, 'data'));
    writeFileSync(join(building, 'rejects.csv'), rejectsCsv(loaded.load.rejects));
  });
  return { out, totals: loaded.load.totals };
}
