import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { BinModel } from '../../src/analysis/model/model-types.ts';
import type { SeasonReview } from '../../src/analysis/types.ts';
import type { BedStore } from '../../src/notebook/form/try-ways.ts';
import type { LoadedSeason, SeasonTables } from '../../src/season/loaded.ts';
import type { Season } from '../../src/season/season.ts';
import { writeTables } from '../../src/season/write-tables.ts';
import { fromIpc } from '../../src/tables/arrow.ts';
import { TABLES } from '../../src/tables/columns.ts';
import { ANY_MARK, hasEnded, PROCESS_MARK } from '../folder/process-mark.ts';

/** What a run that was killed left, and which run. */
const HALF = new RegExp(`^\\.new-[0-9a-f]{32}-(${ANY_MARK})$`);

/** A season as it was loaded and worked out. */
export interface KeptSeason {
  loaded: LoadedSeason;
  review: SeasonReview;
}

/** Where a season keeps what was worked out of it. */
export function cacheFolder({ folder }: Season): string {
  return join(folder, '.cache');
}

/** What is kept of a season under its key; the review only where one was kept that was asked the same. */
export interface ReadBack {
  loaded: LoadedSeason;
  review: SeasonReview | null;
}

/** A review without models is not one from which they are left out: their numbers stand on other pages too. */
function reviewFile(models: boolean): string {
  return models ? 'review-with-models.bin' : 'review.bin';
}

/** @returns null where nothing is kept under the key, or it cannot be read */
export function readKept(folder: string, key: string, models: boolean): ReadBack | null {
  const kept = join(folder, key);
  if (!existsSync(kept)) return null;
  try {
    const { season, load } = deserialize(readFileSync(join(kept, 'season.bin')));
    const names = Object.keys(TABLES);
    const tables = Object.fromEntries(
      names.map((name) => [name, fromIpc(readFileSync(join(kept, 'data', `${name}.arrow`)))]),
    ) as SeasonTables;
    const review = join(kept, reviewFile(models));
    return {
      loaded: { season, tables, load },
      review: existsSync(review) ? deserialize(readFileSync(review)) : null,
    };
  } catch {
    return null;
  }
}

/**
 * Keep a season under its key, whole or not at all; what was kept under other keys goes. A folder that cannot be written to keeps
 * nothing: the next run loads anew.
 *
 * @param models  whether the review was made with them
 * @param anew    the logs were loaded anew, and not taken from here
 * @returns       whether it is kept
 */
export function keepSeason(
  folder: string,
  key: string,
  models: boolean,
  { loaded, review }: KeptSeason,
  anew: boolean,
): boolean {
  const kept = join(folder, key);
  const fresh = join(folder, `.new-${key}-${PROCESS_MARK}`);
  try {
    if (anew) {
      mkdirSync(fresh, { recursive: true });
      writeFileSync(join(folder, '.gitignore'), '*\n');
      writeTables(loaded, join(fresh, 'data'));
      writeFileSync(join(fresh, 'season.bin'), serialize({ season: loaded.season, load: loaded.load }));
      rmSync(kept, { recursive: true, force: true });
      renameSync(fresh, kept);
      for (const name of readdirSync(folder)) {
        const left = HALF.exec(name)?.[1];
        const other = /^[0-9a-f]{32}$/.test(name) && name !== key;
        if (other || (left !== undefined && hasEnded(left)))
          rmSync(join(folder, name), { recursive: true, force: true });
      }
    }
    writeFileSync(fresh, serialize(review));
    renameSync(fresh, join(kept, reviewFile(models)));
    return true;
  } catch {
    rmSync(fresh, { recursive: true, force: true });
    return false;
  }
}

/** Fitted beds beside the kept season, a file a bin; kept in memory alone where there is none. */
export function bedStore(folder: string, key: string): BedStore {
  const beds = new Map<string, BinModel>();
  // Ids of bins are people's words, not names of files.
  const pathOf = (binId: string) => join(folder, key, `bed-${encodeURIComponent(binId)}.bin`);
  return {
    get(binId) {
      const known = beds.get(binId);
      if (known !== undefined || !existsSync(pathOf(binId))) return known;
      try {
        const read: BinModel = deserialize(readFileSync(pathOf(binId)));
        beds.set(binId, read);
        return read;
      } catch {
        return undefined;
      }
    },
    keep(binId, model) {
      beds.set(binId, model);
      try {
        const fresh = `${pathOf(binId)}.${process.pid}`;
        writeFileSync(fresh, serialize(model));
        renameSync(fresh, pathOf(binId));
      } catch {
        // A season that keeps nothing fits anew the next time.
      }
    },
  };
}
