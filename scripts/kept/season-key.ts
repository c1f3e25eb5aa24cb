import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import type { Season } from '../../src/season/season.ts';
import { KIT } from '../notebook/kit-folder.ts';

/** What a kept season hangs on: the bytes of season.yaml and of every file that it names, and the kit's own code. Hex. */
export function seasonKey({ folder, files }: Season): string {
  const hash = createHash('sha256');
  // What the runtime writes it alone reads back.
  hash.update(`${packageJson.version} ${process.versions.v8} ${folder}\n`);
  hash.update(kitHash());
  const paths = new Set(['season.yaml', ...files.flatMap(({ paths }) => paths)]);
  for (const path of paths) hash.update(`\n${path} `).update(fileHash(join(folder, path)));
  return hash.digest('hex').slice(0, 32);
}

function fileHash(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

/** Of what reads and works a season out; pages are drawn anew each time. */
function kitHash(): string {
  const hash = createHash('sha256');
  const src = join(KIT, 'src');
  const names = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.(ts|json)$/.test(name) && !/^(report|notebook)\b/.test(name),
  );
  for (const name of names.sort()) hash.update(`\n${name} `).update(readFileSync(join(src, name)));
  return hash.digest('hex');
}
