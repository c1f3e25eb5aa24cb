import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../../src/base/errors.ts';
import { MANIFEST_SHAPE, type Manifest } from './manifest.ts';
import { shardName } from './sweep-folder.ts';

/** A shard as found. */
export interface FoundShard {
  dir: string;
  manifest: Manifest;
}

export interface FoundShards {
  found: FoundShard[];
  /** names of manifests that are there but cannot be read, `shard-1-of-2.json` */
  broken: string[];
}

/** The shards that stand in folders, a folder named twice once. What is wrong with folders and manifests is told in `problems`. */
export function findShards(dirs: readonly string[], problems: Problem[]): FoundShards {
  const seen = new Set<string>();
  const all: FoundShards = { found: [], broken: [] };
  for (const dir of dirs) {
    const names = manifestsIn(dir);
    if (typeof names === 'string') {
      const message = `${names}. Name the --out folder of a sweep with --shard.`;
      problems.push({ code: 'SHARD_MANIFEST', file: dir, message });
      continue;
    }
    const real = realpathSync(dir);
    if (seen.has(real)) continue;
    seen.add(real);
    for (const name of names) {
      const manifest = readManifest(join(dir, name));
      if (manifest !== null && `${shardName(manifest.shard)}.json` === name) all.found.push({ dir, manifest });
      else {
        all.broken.push(name);
        const message = 'is no manifest of a shard, is cut short or was changed. Run the shard again.';
        problems.push({ code: 'SHARD_MANIFEST', file: join(dir, name), message });
      }
    }
  }
  return all;
}

/** Names of the manifests in a folder, or in words why there is none. */
function manifestsIn(dir: string): string[] | string {
  const is = statSync(dir, { throwIfNoEntry: false });
  if (is === undefined) return 'is not there';
  if (!is.isDirectory()) return 'is a file; shards are named by their folders';
  const names = readdirSync(dir).filter((name) => /^shard-\d+-of-\d+\.json$/.test(name));
  return names.length === 0 ? 'holds no manifest of a shard (shard-1-of-2.json)' : names.sort();
}

function readManifest(path: string): Manifest | null {
  try {
    return MANIFEST_SHAPE.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return null;
  }
}
