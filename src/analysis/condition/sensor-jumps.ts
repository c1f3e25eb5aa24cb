import type { PlaceTrack } from './place-tracks.ts';
import { STEPS_A_DAY } from './step-grid.ts';

/** Lasting rises from here on are looked at, K: what is told as warming is more. */
const JUMP_K = 1.5;
/**
 * A jump holds this part of the lasting rise, from the mean of the day before to that of the day after: all of it, but for noise. Grain that
 * heats as fast as ever, with the day before flat or the day after, has 0.57 of it in two steps.
 */
const PART = [0.8, 1.3] as const;
/** A jump that falls into a step is shared by two. */
const SHARED_STEPS = 2;
/** Readings farther apart do not tell a jump from a rise. */
const FARTHEST_STEPS = STEPS_A_DAY;

/**
 * Steps at whose end a place had jumped to another level and stayed: a sensor's fault, other grain or air come to it. Grain that heats
 * by itself rises on, before or after, however fast.
 *
 * @returns  [steps] 1 at a jump
 */
export function sensorJumps({ tempC, read, from, to }: Pick<PlaceTrack, 'tempC' | 'read' | 'from' | 'to'>): Uint8Array {
  const out = new Uint8Array(tempC.length);
  const mean = (start: number, end: number) => {
    let sum = 0;
    for (let i = start; i < end; i++) sum += tempC[i];
    return sum / (end - start);
  };
  let last = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    if (read[i] === 0) continue;
    const before = Math.max(from, Math.min(last, i - SHARED_STEPS));
    const isNear = i - last <= FARTHEST_STEPS && before < i;
    last = i;
    if (!isNear) continue;
    const day = Math.max(STEPS_A_DAY, i - before);
    const lastingK = mean(i, Math.min(to, i + day)) - mean(Math.max(from, before - day + 1), before + 1);
    const part = (tempC[i] - tempC[before]) / lastingK;
    if (lastingK >= JUMP_K && part >= PART[0] && part <= PART[1]) out[i] = 1;
  }
  return out;
}
