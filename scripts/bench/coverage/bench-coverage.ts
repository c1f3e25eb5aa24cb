import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Case } from './cases.ts';
import type { FrontCase } from './front-cases.ts';
import { playSeason } from './play-season.ts';
import { frontLines, quantityLines } from './print-scores.ts';

export const SEASONS = 200;
/** Every eighth goes through files, the others straight into the tables. */
const BY_FILES = 8;

/** 200 drawn seasons with a known truth through the kit: how often its 90 % intervals hold it, and how wide they are. */
export async function benchCoverage(): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-coverage-'));
  const cases: Case[] = [];
  const fronts: FrontCase[] = [];
  const broken: string[] = [];
  try {
    for (let seed = 1; seed <= SEASONS; seed++) {
      const played = await playSeason(seed, work, seed % BY_FILES === 0);
      cases.push(...played.cases);
      fronts.push(...played.fronts);
      broken.push(...played.broken);
      if (seed % 20 === 0) process.stderr.write(`coverage: ${seed} of ${SEASONS} seasons\n`);
    }
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
  const lines = [
    `coverage: ${SEASONS} drawn seasons, ${SEASONS / BY_FILES} of them through files; 90 % intervals, truth of an independent bed`,
    ...quantityLines(cases),
    ...frontLines(fronts),
    ...broken.map((one) => `broken: ${one}`),
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}
