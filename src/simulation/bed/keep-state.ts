import type { Bed } from './bed.ts';

/** Everything of a bed that moves, copied out, for searches that try one way and go back. */
export interface BedState {
  filled: number;
  tempC: Float64Array;
  moistureDb: Float64Array;
  lifeUsed: Float64Array;
  dryKgM2: Float64Array;
  leaving: Float64Array;
  account: Float64Array;
}

const ARRAYS = ['tempC', 'moistureDb', 'lifeUsed', 'dryKgM2', 'leaving', 'account'] as const;

/** An empty copy of a bed's shape, for `keepState`. */
export function newState(bed: Bed): BedState {
  return {
    filled: 0,
    tempC: new Float64Array(bed.tempC.length),
    moistureDb: new Float64Array(bed.moistureDb.length),
    lifeUsed: new Float64Array(bed.lifeUsed.length),
    dryKgM2: new Float64Array(bed.dryKgM2.length),
    leaving: new Float64Array(bed.leaving.length),
    account: new Float64Array(bed.account.length),
  };
}

/** Copy a bed into a state. No allocation. */
export function keepState(bed: Bed, into: BedState): void {
  into.filled = bed.filled;
  for (const name of ARRAYS) into[name].set(bed[name]);
}

/** Put a bed back to a state. No allocation. */
export function restoreState(bed: Bed, from: BedState): void {
  bed.filled = from.filled;
  for (const name of ARRAYS) bed[name].set(from[name]);
}
