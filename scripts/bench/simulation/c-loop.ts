import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import type { CubicTable } from '../../../src/simulation/bed/cubic-table.ts';
import type { Medium } from '../../../src/simulation/bed/medium.ts';
import { SATURATION } from '../../../src/simulation/bed/saturation-table.ts';
import { AIR_C, AIR_RATIO, SEASON } from './bed-season.ts';

const SOURCE = fileURLToPath(new URL('bed.c', import.meta.url));

/** One way of the loop in C: its time, and where it ended. */
export interface CLoop {
  nsPerLayerStep: number;
  /** [layers] */
  tempC: number[];
  moistureDb: number[];
}

/**
 * The bench's season by the loop in C, compiled for it by gcc -O2.
 *
 * @param medium  corn by modified Henderson with corn's own rate: the formulas that bed.c has
 * @returns       by the formulas through libm, and by the same tables; null where there is no gcc
 */
export function runInC(medium: Medium, dryAirKgM2: number, rounds: number): { libm: CLoop; tables: CLoop } | null {
  const folder = mkdtempSync(join(tmpdir(), 'fanbook-bench-'));
  try {
    const [program, input] = [join(folder, 'bed'), join(folder, 'input')];
    try {
      execFileSync('gcc', ['-O2', '-o', program, SOURCE, '-lm']);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
      throw error;
    }
    writeFileSync(input, inputOf(medium, dryAirKgM2, rounds));
    const lines = execFileSync(program, [input], { encoding: 'utf8' }).trim().split('\n');
    const [libm, tables] = lines.map((line) => {
      const [nsPerLayerStep, ...state] = line.split(' ').map(Number);
      return {
        nsPerLayerStep,
        tempC: state.filter((_, i) => i % 2 === 0),
        moistureDb: state.filter((_, i) => i % 2 === 1),
      };
    });
    return { libm, tables };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function inputOf(medium: Medium, dryAirKgM2: number, rounds: number): Float64Array {
  const { layers, hours, depthM, seconds, startC, startDb, pressurePa } = SEASON;
  const { a, b, c } = isothermOf(medium.crop, medium.isotherm);
  const table = ({ low, perUnit, end, cubics }: CubicTable) => [low, perUnit, end, cubics.length, ...cubics];
  return Float64Array.from([
    ...[layers, hours, rounds, (medium.dryDensityKgM3 * depthM) / layers, dryAirKgM2, seconds, startC, startDb],
    ...[pressurePa, medium.heatDryJKgK, medium.heatPerMoistureJKgK, a, b, c],
    ...AIR_C,
    ...AIR_RATIO,
    ...[medium.byTemp, medium.byMoisture, medium.humidity, medium.binding, medium.rate, SATURATION].flatMap(table),
  ]);
}
