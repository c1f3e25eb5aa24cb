import { basename } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import type { MadeBy } from '../../src/report/page.ts';
import { Units } from '../../src/report/units.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { changedDefaults } from './changed-defaults.ts';

/** The units, currency and clock of a season's readers. */
export function unitsOf({ season }: LoadedSeason): Units {
  return new Units(season.showUnits, season.currency, season.site.timeZone);
}

/** A command as a page names it, with the options that move its numbers. */
export function commandSaid(
  command: string,
  folder: string,
  models: boolean | undefined,
  previous: string | null | undefined,
) {
  const options = [models === false ? ' --no-model' : '', previous == null ? '' : ` --previous ${basename(previous)}`];
  return `npm run ${command} -- ${basename(folder)}${options.join('')}`;
}

/** Where a page of a season comes from. */
export function madeBy({ season, load }: LoadedSeason, command: string, generatedAtMs: number): MadeBy {
  return {
    seasonTitle: season.title,
    farm: season.preparedFor,
    command,
    version: packageJson.version,
    generatedAtMs,
    inputs: load.files.map(({ path, sha256, bytes, rows, firstMs, lastMs }) => ({
      path,
      sha256,
      bytes,
      rows,
      firstMs,
      lastMs,
    })),
    changedDefaults: changedDefaults(season),
  };
}
