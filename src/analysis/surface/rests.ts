import { STEPS_A_DAY } from '../condition/step-grid.ts';

/** Fan hours that a rest may hold, and the shortest rest that tells of the surface, steps of a quarter day. */
const MOST_BLOWN_H = 2;
const SHORTEST = 14 * STEPS_A_DAY;

/** Why no stretch was a rest, a whole sentence. @param surelyH  hours of each step in which a fan is known to have run, [steps]; blown hours count those that nobody knows too */
export function noRestSaid(surelyH: Float64Array): string {
  if (surelyH.length < SHORTEST) return 'The readings of the full bin span less than two weeks.';
  return rests(surelyH, 0, surelyH.length).length > 0
    ? 'The fan logs leave open whether the fans rested for two weeks while the bin was full.'
    : 'The fans never rested for two weeks while the bin was full.';
}

/** Stretches of steps without air, long enough for weather to come in from above: none overlaps another. @param blownH  hours of each step in which a fan ran or may have run, [steps] */
export function rests(blownH: Float64Array, from: number, to: number): [from: number, to: number][] {
  const out: [number, number][] = [];
  let start = from;
  let hours = 0;
  for (let step = from; step <= to; step++) {
    hours += step < to ? blownH[step] : Number.POSITIVE_INFINITY;
    if (hours <= MOST_BLOWN_H) continue;
    if (step - start >= SHORTEST) out.push([start, step]);
    start = step + 1;
    hours = 0;
  }
  return out;
}
