import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { loadSeason } from '../../../../src/season/load-season.ts';
import type { ArchiveFormat } from '../../../../src/season/season.ts';
import { integers, numbers } from '../../../../src/tables/arrow.ts';
import { noChecks } from '../load-of.ts';
import { fileOf, seasonOf } from '../season-of.ts';

/** Public files beside the repository (sources and licences in their README); they are no part of it. */
export const PUBLIC = join(import.meta.dirname, '../../../../../shared/weather');

/** Elsewhere their tests are skipped; CI has the files, and fails without. */
export const SKIP_PUBLIC = !existsSync(PUBLIC) && process.env.CI !== 'true';

/** The weather of a public file: time and columns, and the rows in good standing. */
export async function publicWeather(file: string, format: ArchiveFormat) {
  const { tables, load } = await loadSeason(
    seasonOf(PUBLIC, [fileOf('weather', file, { format, role: 'history' })]),
    undefined,
    noChecks,
  );
  const flags = integers(tables.weather, 'flags');
  const good = [...flags.keys()].filter((row) => flags[row] === 0);
  const column = (name: string) => numbers(tables.weather, name);
  return { load, file: load.files[0], time: column('time'), flags, good, column };
}

/** Mean without missing values. */
export function mean(values: Iterable<number>): number {
  const all = [...values].filter((value) => !Number.isNaN(value));
  return all.reduce((sum, value) => sum + value, 0) / all.length;
}
