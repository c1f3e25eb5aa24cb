import type { Span } from '../types.ts';
import type { HourPieces } from './hour-pieces.ts';

/** Pieces that follow each other with one code, joined. */
export function stretchesOf({ fromMs, toMs }: HourPieces, codeOf: (i: number) => number): (Span & { code: number })[] {
  const out: (Span & { code: number })[] = [];
  for (let i = 0; i < fromMs.length; i++) {
    const last = out.at(-1);
    if (last !== undefined && last.toMs === fromMs[i] && last.code === codeOf(i)) last.toMs = toMs[i];
    else out.push({ fromMs: fromMs[i], toMs: toMs[i], code: codeOf(i) });
  }
  return out;
}
