import { resolve } from 'node:path';
import type { BedStore } from '../../src/notebook/form/try-ways.ts';
import { bedStore, cacheFolder, type KeptSeason } from '../kept/season-cache.ts';
import { seasonOfFiles } from '../kept/season-of-files.ts';
import { workedOut } from '../kept/worked-out.ts';

export interface OpenSeason extends KeptSeason {
  beds: BedStore;
}

export interface OpenOptions {
  /** with the bins' models and other ways to run them; some seconds a bin */
  models: boolean;
  /** told one line a stage */
  say(line: string): void;
}

/**
 * A season loaded and worked out, from what is kept of it where no file changed since, with the beds that notebooks fitted.
 *
 * @throws InputError with every problem of the season's files
 */
export async function openSeason(folder: string, { models, say }: OpenOptions): Promise<OpenSeason> {
  const season = await seasonOfFiles(resolve(folder));
  say(`Season   ${season.title}`);
  const { loaded, review, key } = await workedOut(season, { models, keep: true, onStage: say });
  return { loaded, review, beds: bedStore(cacheFolder(season), String(key)) };
}
