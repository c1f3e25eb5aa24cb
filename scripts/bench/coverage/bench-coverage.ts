import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SeedRange } from '../seed-range.ts';
import type { Case } from './cases.ts';
import type { FrontCase } from './front-cases.ts';
import { playSeason } from './play-season.ts';
import { frontLines, quantityLines } from './print-scores.ts';

/** Drawn seasons where none are named. */
const SEASONS: SeedRange = { from: 1, to: 200 };
/** Every eighth goes through files, the others straight into the tables. */
const BY_FILES = 8;

/** Drawn seasons with a known truth through the kit: how often its 90 % intervals hold it, and how wide they are. */
export async function benchCoverage({ from, to }: SeedRange = SEASONS): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-coverage-'));
  const cases: Case[] = [];
  const fronts: FrontCase[] = [];
  const broken: string[] = [];
  try {
    for (let seed = from; seed <= to; seed++) {
      const played = await playSeason(seed, work, seed % BY_FILES === 0);
      cases.push(...played.cases);
      fronts.push(...played.fronts);
      broken.push(...played.broken);
      if (seed % 20 === 0) process.stderr.write(`coverage: seed ${seed} of ${from} to ${to}\n`);
    }
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
  const lines = [
    `coverage: drawn seasons ${from} to ${to}, every ${BY_FILES}th through files; 90 % intervals, truth of an independent bed`,
    ...quantityLines(cases),
    ...frontLines(fronts),
    ...broken.map((one) => `broken: ${one}`),
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}
