import { basename } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import type { InputFile, MadeBy } from '../../src/report/page.ts';
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

/** The files that a season was read from. */
export function inputsOf({ load }: LoadedSeason): InputFile[] {
  return load.files.map(({ path, sha256, bytes, rows, firstMs, lastMs }) => ({
    path,
    sha256,
    bytes,
    rows,
    firstMs,
    lastMs,
  }));
}

/** Where a page comes from that tells of the season before, too. */
export function madeBeside(made: MadeBy, before: readonly InputFile[]): MadeBy {
  return { ...made, inputs: [...made.inputs, ...before] };
}

/** Where a page of a season comes from. */
export function madeBy(loaded: LoadedSeason, command: string, generatedAtMs: number): MadeBy {
  const { season } = loaded;
  return {
    seasonTitle: season.title,
    farm: season.preparedFor,
    command,
    version: packageJson.version,
    generatedAtMs,
    inputs: inputsOf(loaded),
    changedDefaults: changedDefaults(season),
  };
}
