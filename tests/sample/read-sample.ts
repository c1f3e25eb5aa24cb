import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { binTruth } from '../../scripts/sample/bin-truth.ts';
import type { tariffTruth } from '../../scripts/sample/fan-truth.ts';
import type { PlantedFault } from '../../scripts/sample/faults.ts';

export const SAMPLES = resolve('data-samples');

/** truth.json of a sample season */
export interface Truth {
  seed: number;
  bins: ReturnType<typeof binTruth>[];
  tariffs: ReturnType<typeof tariffTruth>;
  faults: PlantedFault[];
}

export const truthOf = (folder: string): Truth =>
  JSON.parse(readFileSync(join(SAMPLES, folder, 'truth.json'), 'utf8')) as Truth;

/** What a file says, unpacked. */
export function textOf(bytes: Buffer, path: string): string {
  return (path.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8');
}

export function linesOf(folder: string, path: string): string[] {
  return textOf(readFileSync(join(SAMPLES, folder, path)), path)
    .split(/\r?\n/)
    .slice(0, -1);
}
