import type { OwnFolder } from '../folder/own-folder.ts';

/** What stands in a sweep's folder; `.new-` are files of a run that was killed as it wrote them. */
export const SWEEP_FOLDER: OwnFolder = {
  marks: [],
  own: /^(strategies\.arrow|sweep\.json|(finished|fits)(-\d+-of-\d+)?\.jsonl|shard-\d+-of-\d+\.(parquet|json))(\.new-\d+(-[0-9a-f]{8})?)?$/,
};

export type Shard = Readonly<{ index: number; of: number }>;

export function shardName({ index, of }: Shard): string {
  return `shard-${index}-of-${of}`;
}

export function finishedName(shard: Shard | null): string {
  return keptName('finished', shard);
}

export function fitsName(shard: Shard | null): string {
  return keptName('fits', shard);
}

function keptName(what: string, shard: Shard | null): string {
  return shard === null ? `${what}.jsonl` : `${what}-${shard.index}-of-${shard.of}.jsonl`;
}
