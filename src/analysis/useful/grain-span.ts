import type { Bin } from '../../season/season.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import type { HourPieces } from './hour-pieces.ts';

/** From when on grain was in, until it was out. */
export function grainSpan(bin: Bin, fill: FillTimes): [number, number] {
  return [fill.begunMs ?? Number.NEGATIVE_INFINITY, bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY];
}

/** 1 for the pieces in which grain was in, [pieces]. */
export function inGrain({ midMs }: HourPieces, bin: Bin, fill: FillTimes): Uint8Array {
  const [fromMs, toMs] = grainSpan(bin, fill);
  return Uint8Array.from(midMs, (ms) => (ms >= fromMs && ms < toMs ? 1 : 0));
}
