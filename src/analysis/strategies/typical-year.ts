import { firstNotBefore } from '../../base/first-not-before.ts';
import type { FileLoad } from '../../season/loaded.ts';
import type { OutdoorAir } from './outdoor-air.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** A whole typical year on file, [fromMs, toMs), ms UTC. */
export interface TypicalYear {
  fromMs: number;
  toMs: number;
}

/** The typical years among a season's files that are whole: only these come back to where they began. */
export function typicalYears(files: readonly FileLoad[]): TypicalYear[] {
  return files.flatMap(({ typicalYear, firstMs, lastMs }) => {
    if (typicalYear !== true || firstMs === null || lastMs === null) return [];
    const days = (lastMs + HOUR_MS - firstMs) / DAY_MS;
    return days === 365 || days === 366 ? [{ fromMs: firstMs, toMs: lastMs + HOUR_MS }] : [];
  });
}

/**
 * The air that a run from `fromMs` to `toMs` (ms UTC) meets. A run that begins in a typical year and goes on over its end finds
 * that year's beginning again, which is how a typical year is meant: its December is followed by no other January.
 */
export function airOfRun(air: OutdoorAir, fromMs: number, toMs: number): OutdoorAir {
  const year = air.typical.find((one) => fromMs >= one.fromMs && fromMs < one.toMs);
  if (year === undefined || toMs <= year.toMs) return air;
  const { timeMs, tempC, humidityRatio, hourMean } = air;
  const first = firstNotBefore(timeMs, year.fromMs);
  const end = firstNotBefore(timeMs, year.toMs);
  const shiftMs = year.toMs - year.fromMs;
  return {
    timeMs: twice(timeMs, first, end, shiftMs),
    tempC: twice(tempC, first, end, 0),
    humidityRatio: twice(humidityRatio, first, end, 0),
    hourMean: Uint8Array.from({ length: 2 * (end - first) }, (_, i) => hourMean[first + (i % (end - first))]),
    typical: air.typical,
  };
}

function twice(values: Float64Array, first: number, end: number, add: number): Float64Array {
  const once = values.subarray(first, end);
  const both = new Float64Array(2 * once.length);
  both.set(once);
  both.set(
    once.map((value) => value + add),
    once.length,
  );
  return both;
}
