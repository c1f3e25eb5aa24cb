import type { Table } from 'apache-arrow';
import { InputError, type Problem } from '../../../src/base/errors.ts';
import { loadSeason, type SeasonCheck } from '../../../src/season/load-season.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import type { FileSpec, Season } from '../../../src/season/season.ts';
import { folderOf, seasonOf } from './season-of.ts';

/** No checks: what the readers alone do. */
export const noChecks: SeasonCheck = (_season, tables) => {
  const none = (table: Table) => new Uint8Array(table.numRows);
  return {
    flags: {
      readings: { temp: none(tables.readings), moisture: none(tables.readings) },
      fan: none(tables.fan),
      plenum: none(tables.plenum),
      weather: none(tables.weather),
    },
    findings: [],
  };
};

export async function loadOf(
  files: Readonly<Record<string, string | Uint8Array>>,
  specs: FileSpec[],
  more: Partial<Season> = {},
): Promise<LoadedSeason> {
  const { folder, remove } = folderOf(files);
  try {
    return await loadSeason(seasonOf(folder, specs, more), undefined, noChecks);
  } finally {
    remove();
  }
}

/** The problems that loading throws. */
export async function problemsOf(
  files: Readonly<Record<string, string | Uint8Array>>,
  specs: FileSpec[],
): Promise<readonly Problem[]> {
  try {
    await loadOf(files, specs);
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  throw new Error('loading should have failed');
}

/** A table as rows of plain values, times as ISO text, for small tables. */
export function rowsOf(table: Table): Record<string, unknown>[] {
  return table.toArray().map((row) => {
    const out: Record<string, unknown> = {};
    for (const [key, value] of Object.entries(row.toJSON())) {
      const isTime = key === 'time' || key === 'from' || key === 'to';
      out[key] = isTime ? new Date(Number(value)).toISOString() : value;
    }
    return out;
  });
}
