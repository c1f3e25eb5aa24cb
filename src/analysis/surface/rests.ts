/** Fan hours that a rest may hold, and the shortest rest that tells of the surface, steps of a quarter day. */
const MOST_BLOWN_H = 2;
const SHORTEST = 14 * 4;

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
