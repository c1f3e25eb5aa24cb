import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { InputError } from '../base/errors.ts';

/**
 * Write a folder whole or not at all: it is built beside and moved into place, so a failure leaves the previous one as it was.
 *
 * @param dir   the folder to write; replaced only if it holds nothing but `own` names
 * @param own   what such a folder holds, e.g. `data`, `rejects.csv`
 * @param fill  writes into the folder it is given
 * @throws      InputError (OUT_FOLDER) when the folder holds something else, or is a file
 */
export async function replaceFolder(
  dir: string,
  own: readonly string[],
  fill: (building: string) => Promise<void> | void,
): Promise<void> {
  if (existsSync(dir)) {
    const foreign = statSync(dir).isDirectory() ? readdirSync(dir).filter((name) => !own.includes(name)) : ['a file'];
    if (foreign.length > 0) {
      const message = `the folder to write holds something else (${foreign.slice(0, 5).join(', ')}); it is left alone. Give another folder with --out.`;
      throw new InputError([{ code: 'OUT_FOLDER', file: dir, message }]);
    }
  }
  const building = `${dir}.part-${process.pid}`;
  const old = `${dir}.old-${process.pid}`;
  mkdirSync(dirname(dir), { recursive: true });
  rmSync(building, { recursive: true, force: true });
  try {
    mkdirSync(building);
    await fill(building);
    if (existsSync(dir)) renameSync(dir, old);
    try {
      renameSync(building, dir);
    } catch (error) {
      if (existsSync(old)) renameSync(old, dir);
      throw error;
    }
    rmSync(old, { recursive: true, force: true });
  } finally {
    rmSync(building, { recursive: true, force: true });
  }
}
