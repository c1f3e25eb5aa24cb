import { renameSync, writeFileSync } from 'node:fs';

/** Write a file whole or not at all: beside it first, then in its place. */
export function writeWhole(path: string, content: Uint8Array | string): void {
  const beside = `${path}.new-${process.pid}`;
  writeFileSync(beside, content);
  renameSync(beside, path);
}
