import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { InputError, type Problem } from '../../../src/base/errors.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import type { Season } from '../../../src/season/season.ts';

/** A season folder of its own for each test, with these files. */
export function seasonFolder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'season-'));
  made.push(folder);
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

const made: string[] = [];

export function removeFolders(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
}

export const read = (yaml: string, files: Readonly<Record<string, string>> = {}): Promise<Season> =>
  readSeason(seasonFolder({ ...files, 'season.yaml': yaml }));

/** The problems of a folder; anything but an InputError is passed on. */
export async function problemsOf(folder: string): Promise<readonly Problem[]> {
  try {
    await readSeason(folder);
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
}

/** Line and column (from 1) of the `nth` time that `needle` stands in the text. */
export function placeOf(text: string, needle: string, nth = 1): { line: number; column: number } {
  let at = -1;
  for (let i = 0; i < nth; i++) at = text.indexOf(needle, at + 1);
  if (at < 0) throw new Error(`"${needle}" is not in the text`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: (before.at(-1) as string).length + 1 };
}
