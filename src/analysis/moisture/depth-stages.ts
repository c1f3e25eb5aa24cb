import type { Bin } from '../../season/season.ts';
import type { Span } from '../types.ts';

/** A time of one depth. */
export interface DepthStage {
  span: Span;
  depthM: number;
}

/** Steps that change the depth by less than this share of the deepest are levelling and settling. */
const SAME_SHARE = 0.03;

/**
 * The times between which grain came or went, by the stated depths; a bin's last stage ends when it is emptied.
 *
 * @param lastMs  until when the logs tell; used where no date ends the last stage
 * @returns       rising; none where no depth above zero is stated
 */
export function depthStages(bin: Bin, firstMs: number, lastMs: number): DepthStage[] {
  const { depthSteps, unloadedMs, filledMs } = bin.grain;
  const deepest = Math.max(0, ...depthSteps.map((step) => step.depthM));
  const kept: { fromMs: number; depthM: number }[] = [];
  for (const step of depthSteps) {
    const before = kept.at(-1);
    if (before !== undefined && Math.abs(step.depthM - before.depthM) < SAME_SHARE * deepest) continue;
    kept.push(step);
  }
  const opens = kept.length === 1 ? (filledMs ?? firstMs) : Number.NEGATIVE_INFINITY;
  return kept.flatMap(({ fromMs, depthM }, i) => {
    const start = Math.max(fromMs, opens, Number.isFinite(fromMs) ? fromMs : (filledMs ?? firstMs));
    const next = kept[i + 1]?.fromMs ?? lastMs;
    // `unloaded` tells when the emptying began: the grain that still lies there later is on its way out.
    const end = Math.min(next, unloadedMs ?? Number.POSITIVE_INFINITY);
    return depthM > 0 && end > start ? [{ span: { fromMs: start, toMs: end }, depthM }] : [];
  });
}
