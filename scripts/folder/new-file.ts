import { closeSync, openSync, rmSync, writeFileSync } from 'node:fs';

/** Write a file where none stands, whole or not at all. @throws EEXIST where one does, or what the disk answers */
export function writeNewFile(path: string, text: string): void {
  // `wx` fails where the file exists, so nothing is ever written over; from here on it is ours to remove.
  const file = openSync(path, 'wx');
  try {
    writeFileSync(file, text);
    closeSync(file);
  } catch (error) {
    rmSync(path, { force: true });
    throw error;
  }
}
