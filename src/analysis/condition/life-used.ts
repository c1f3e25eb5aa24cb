import { dryFromWet } from '../../grain/moisture-basis.ts';
import type { StorageLife } from '../../simulation/bed/storage-life.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { STEP_H } from './step-grid.ts';

/** A place's stay in other circumstances: each temperature and moisture so much higher. */
export interface Moved {
  addK?: number;
  addWb?: number;
  /** in holes of the log the colder or the warmer of the readings beside them */
  holes?: 'cold' | 'warm';
}

/**
 * Share of the allowable storage time that a place used over its stay: the sum of each step over the time allowed at its
 * temperature and moisture.
 *
 * @param moistureWb  [steps], fraction, wet basis
 * @source            ndsu-2019-drying: parts of the storage time that are used add up
 */
export function lifeUsed(life: StorageLife, track: PlaceTrack, moistureWb: Float64Array, moved: Moved = {}): number {
  const { addK = 0, addWb = 0, holes } = moved;
  const tempC = holes === undefined ? track.tempC : holes === 'cold' ? track.lowC : track.highC;
  let sum = 0;
  for (let i = track.from; i < track.to; i++) {
    sum +=
      STEP_H * life.sharePerHour(tempC[i] + addK, dryFromWet(Math.min(0.6, Math.max(0.01, moistureWb[i] + addWb))));
  }
  return sum;
}

/** The same up to the end of each step, [steps]. */
export function lifeUsedSoFar(life: StorageLife, track: PlaceTrack, moistureWb: Float64Array): Float64Array {
  const out = new Float64Array(track.tempC.length);
  let sum = 0;
  for (let i = 0; i < out.length; i++) {
    if (i >= track.from && i < track.to) {
      sum += STEP_H * life.sharePerHour(track.tempC[i], dryFromWet(Math.min(0.6, Math.max(0.01, moistureWb[i]))));
    }
    out[i] = sum;
  }
  return out;
}
