import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type FitCase, fitCases } from './fit-cases.ts';

/** What a worker does: one drawn season. */
export default async function fitTask(seed: number): Promise<FitCase[]> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-ranking-'));
  try {
    return await fitCases(seed, work);
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}
