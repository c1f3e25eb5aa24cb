import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BADNESS } from './made-bad.ts';
import { type ModelCase, modelCases } from './model-cases.ts';

export interface ModelTask {
  seed: number;
  /** id of `BADNESS`; null: a good log */
  bad: string | null;
}

/** What a worker does: one drawn season. */
export default async function modelTask({ seed, bad }: ModelTask): Promise<ModelCase[]> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-model-'));
  try {
    return await modelCases(seed, work, BADNESS.find((one) => one.id === bad) ?? null);
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}
