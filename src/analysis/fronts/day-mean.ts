import type { FanPieces } from './fan-pieces.ts';
import { DAY_H, HOUR_MS } from './front-limits.ts';

/**
 * Running mean of the air over the fan-on time of a day: half a day to each side, moved inside at the ends of a run so
 * that it is always a whole day of the clock.
 *
 * @param airC  [pieces], NaN where not known
 * @returns     [pieces]; NaN where the day has no known air
 */
export function dayMean(pieces: FanPieces, airC: Float64Array): Float64Array {
  return meanOver(pieces, airC, (piece, runFromMs, runToMs) => dayAround(pieces.midMs[piece], runFromMs, runToMs));
}

/** Running mean over the fan-on time of the day up to each piece, as far as its run goes back, [pieces]. */
export function dayBefore(pieces: FanPieces, tempC: Float64Array): Float64Array {
  return meanOver(pieces, tempC, (piece) => [pieces.toMs[piece] - DAY_H * HOUR_MS, pieces.toMs[piece]]);
}

/** Mean over the pieces of the same run whose middle lies in a window that moves forward, [pieces]. */
function meanOver(
  pieces: FanPieces,
  airC: Float64Array,
  windowOf: (piece: number, runFromMs: number, runToMs: number) => [fromMs: number, toMs: number],
): Float64Array {
  const { midMs, hours, run } = pieces;
  const out = new Float64Array(midMs.length);
  let low = 0;
  let high = 0;
  let sum = 0;
  let weight = 0;
  const take = (i: number, sign: number) => {
    if (Number.isNaN(airC[i])) return;
    sum += sign * hours[i] * airC[i];
    weight += sign * hours[i];
  };
  for (let i = 0; i < midMs.length; i++) {
    const [from, to] = windowOf(i, pieces.runFromMs[run[i]], pieces.runToMs[run[i]]);
    while (high < midMs.length && midMs[high] < to && run[high] <= run[i]) take(high++, 1);
    while (low < high && (midMs[low] < from || run[low] < run[i])) take(low++, -1);
    out[i] = weight > 1e-6 ? sum / weight : Number.NaN;
  }
  return out;
}

/** The day of the clock around a moment of a run, moved inside the run where it can be, ms UTC. */
export function dayAround(ms: number, runFromMs: number, runToMs: number): [fromMs: number, toMs: number] {
  const day = DAY_H * HOUR_MS;
  const from = Math.max(runFromMs, Math.min(ms - day / 2, runToMs - day));
  return [from, from + day];
}
