import { InputError } from '../../src/base/errors.ts';
import { readSeason } from '../../src/season/read-season.ts';
import type { Season } from '../../src/season/season.ts';

/** A season that names files. @throws InputError with every problem of season.yaml, or where it names none */
export async function seasonOfFiles(folder: string): Promise<Season> {
  const season = await readSeason(folder);
  if (season.files.length > 0) return season;
  const message =
    'lists no file, so there is nothing to review. Add the logs under `files:` (the starter has them as comments).';
  throw new InputError([{ code: 'SEASON_FILES', file: 'season.yaml', message }]);
}
