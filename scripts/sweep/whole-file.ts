import { appendFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { diskProblem } from '../folder/disk-problem.ts';
import { clearHalves, halfOf } from '../folder/half-file.ts';

/** Write a file whole or not at all: beside it first, then in its place. @throws InputError OUT_FILE where the disk does not take it */
export function writeWhole(path: string, content: Uint8Array | string): void {
  writeTogether([[path, content]]);
}

/** Files that tell of each other: all are written beside their places before the first is moved there, so that a full disk parts none. */
export function writeTogether(files: readonly (readonly [path: string, content: Uint8Array | string])[]): void {
  let at = '';
  try {
    for (const [path, content] of files) {
      at = path;
      clearHalves(path);
      writeFileSync(halfOf(path), content);
    }
    for (const [path] of files) {
      at = path;
      renameSync(halfOf(path), path);
    }
  } catch (error) {
    for (const [path] of files) rmSync(halfOf(path), { force: true });
    throw refused(error, at);
  }
}

/** Lines put behind those of a file; of a line that the disk cut short its reader makes nothing. @throws as `writeWhole` */
export function appendLines(path: string, lines: string): void {
  try {
    appendFileSync(path, lines);
  } catch (error) {
    throw refused(error, path);
  }
}

function refused(error: unknown, path: string): unknown {
  const stands = 'What stands there is kept, and the same command goes on from it.';
  return diskProblem(error, { code: 'OUT_FILE', path, folder: dirname(path), stands });
}
