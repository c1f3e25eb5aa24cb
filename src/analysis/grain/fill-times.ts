import type { Bin } from '../../season/season.ts';

/** When the bin held its grain, and how deep it stood. */
export interface FillTimes {
  /** levelled depth when full: the deepest that is stated before unloading; null where none is */
  depthM: number | null;
  /** from when on the bin counts as filled, ms UTC; null where nothing says it */
  filledMs: number | null;
  /** when it is first said to hold grain, and when it had its full depth or was said to be filled; null where nothing says it */
  begunMs: number | null;
  fullMs: number | null;
  /** until when it counts as whole; null where nothing says it */
  wholeUntilMs: number | null;
  /** from when on it holds grain that came in after some of the first had been taken out, ms UTC; left out where none did */
  refilledMs?: number;
  /** what a reader must know of it, whole sentences */
  notes: readonly string[];
}

/** A bin counts as filled once this share of its full depth is in: topping up and levelling come later. */
const FILLED_SHARE = 0.9;
/** Settling and coring take less than this; below it, grain has been taken out. */
const WHOLE_SHARE = 0.85;
/** A depth that rises by less after grain was taken out was levelled, or measured anew. */
const REFILLED_SHARE = 0.1;

/**
 * Read the filling and emptying of a bin from its stated depths and dates.
 *
 * Filled: the later of `filled` and the step that brings the depth to nine tenths of the deepest.
 * Whole until: the earlier of `unloaded` and the first later step that leaves less than 85 % of the deepest.
 */
export function fillTimes(bin: Bin): FillTimes {
  const { depthSteps, filledMs, unloadedMs } = bin.grain;
  const steps = depthSteps.filter((step) => unloadedMs === null || step.fromMs < unloadedMs);
  if (steps.length === 0)
    return { depthM: null, filledMs, begunMs: filledMs, fullMs: filledMs, wholeUntilMs: unloadedMs, notes: [] };
  const depthM = Math.max(...steps.map((step) => step.depthM));
  const full = steps.findIndex((step) => step.depthM >= FILLED_SHARE * depthM);
  const deepest = steps.findIndex((step) => step.depthM === depthM);
  const lowered = steps.find((step, index) => index > deepest && step.depthM < WHOLE_SHARE * depthM);
  const filled = Math.max(filledMs ?? Number.NEGATIVE_INFINITY, steps[full].fromMs);
  const wholeUntil = Math.min(unloadedMs ?? Number.POSITIVE_INFINITY, lowered?.fromMs ?? Number.POSITIVE_INFINITY);
  const notes: string[] = [];
  if (full > 0) notes.push('The bin was filled in steps; it counts as filled once nine tenths of its depth were in.');
  if (lowered !== undefined) {
    notes.push(
      'Grain was taken out before the bin was unloaded; the end is told for the bin while it was still whole.',
    );
  }
  const refilledMs = lowered === undefined ? null : refilled(steps.slice(steps.indexOf(lowered)), depthM);
  if (refilledMs !== null) {
    notes.push(
      'The bin was filled again after grain had been taken out; moistures and points are those of the first filling. A bin of its own in season.yaml, with files of its own, would tell the second.',
    );
  }
  return {
    depthM,
    ...(refilledMs === null ? {} : { refilledMs }),
    filledMs: finite(filled),
    begunMs: finite(Math.min(filledMs ?? Number.POSITIVE_INFINITY, firstDated(steps))),
    fullMs: finite(Math.max(filled, steps[deepest].fromMs)),
    wholeUntilMs: finite(wholeUntil),
    notes,
  };
}

/** When a bin whose grain was taken out in part or whole was filled again; null where it was not. */
function refilled(steps: Bin['grain']['depthSteps'], depthM: number): number | null {
  let lowestM = Number.POSITIVE_INFINITY;
  for (const step of steps) {
    lowestM = Math.min(lowestM, step.depthM);
    if (step.depthM - lowestM >= REFILLED_SHARE * depthM) return step.fromMs;
  }
  return null;
}

function finite(ms: number): number | null {
  return Number.isFinite(ms) ? ms : null;
}

function firstDated(steps: Bin['grain']['depthSteps']): number {
  return Math.min(
    ...steps.filter((step) => step.depthM > 0 && Number.isFinite(step.fromMs)).map((step) => step.fromMs),
    Number.POSITIVE_INFINITY,
  );
}
