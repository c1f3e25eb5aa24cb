import { InputError, type Problem } from '../../../src/base/errors.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import type { Season } from '../../../src/season/season.ts';
import { folderOf } from '../readers/season-of.ts';

const made: (() => void)[] = [];

/** A season folder of its own for each test, with these files. */
export function seasonFolder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const { folder, remove } = folderOf(files);
  made.push(remove);
  return folder;
}

export function removeFolders(): void {
  for (const remove of made.splice(0)) remove();
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
