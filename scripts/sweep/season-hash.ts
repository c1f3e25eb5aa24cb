import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Season } from '../../src/season/season.ts';

/** Hash of season.yaml and of every file that it lists, as they lie on disk. */
export function seasonHash(season: Season): string {
  const hash = createHash('sha256');
  const paths = [...new Set(season.files.flatMap((file) => [...file.paths]))].sort();
  for (const path of ['season.yaml', ...paths]) {
    const own = createHash('sha256').update(readFileSync(join(season.folder, path)));
    hash.update(`${path} ${own.digest('hex')}\n`);
  }
  return hash.digest('hex');
}
