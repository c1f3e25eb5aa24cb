import { DEMAND_MS } from './demand.ts';
import type { PowerSpans } from './energy-cost.ts';

interface Run {
  part: number;
  startMs: number;
  /** length and power of the run's stretches */
  pieces: { lengthMs: number; powerW: number }[];
}

/**
 * The same runs with no two starts in one demand interval: of fans that start within the same quarter hour the first
 * starts when it did, each next one a whole quarter hour later than it would have, as far as it needs. A run keeps its length;
 * where it would run into the fan's next one, that follows it at once.
 *
 * @param parts  one entry a fan; stretches with power are runs, neighbours without a rest between them one run
 * @returns      [parts], the runs alone
 */
export function staggeredStarts(parts: readonly PowerSpans[]): PowerSpans[] {
  const runs = parts.flatMap(runsOf).sort((a, b) => a.startMs - b.startMs || powerOf(b) - powerOf(a));
  const taken = new Set<number>();
  const endMs = parts.map(() => Number.NEGATIVE_INFINITY);
  const pieces = parts.map((): { startMs: number; endMs: number; powerW: number }[] => []);
  for (const run of runs) {
    const before = endMs[run.part];
    let at = Math.max(run.startMs, before);
    // A fan that runs on from its last run does not start.
    if (at > before) {
      while (taken.has(Math.floor(at / DEMAND_MS))) at += DEMAND_MS;
      taken.add(Math.floor(at / DEMAND_MS));
    }
    for (const { lengthMs, powerW } of run.pieces) {
      pieces[run.part].push({ startMs: at, endMs: at + lengthMs, powerW });
      at += lengthMs;
    }
    endMs[run.part] = at;
  }
  return pieces.map((list) => ({
    startMs: Float64Array.from(list, (piece) => piece.startMs),
    endMs: Float64Array.from(list, (piece) => piece.endMs),
    powerW: Float64Array.from(list, (piece) => piece.powerW),
  }));
}

function runsOf({ startMs, endMs, powerW }: PowerSpans, part: number): Run[] {
  const runs: Run[] = [];
  let lastMs = Number.NaN;
  for (let i = 0; i < startMs.length; i++) {
    if (!(powerW[i] > 0)) continue;
    if (startMs[i] !== lastMs) runs.push({ part, startMs: startMs[i], pieces: [] });
    runs[runs.length - 1].pieces.push({ lengthMs: endMs[i] - startMs[i], powerW: powerW[i] });
    lastMs = endMs[i];
  }
  return runs;
}

const powerOf = (run: Run) => run.pieces[0].powerW;
