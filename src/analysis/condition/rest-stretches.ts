/** First and last day of a stretch of rest. */
export type Stretch = readonly [from: number, to: number];

/** Fan hours that a stretch of rest may hold. */
const MOST_FAN_H = 2;

/**
 * Every stretch of rest of some lengths, by its first day, then by its last.
 *
 * @param fanHours  by day, [days]; NaN where not known: such days are no rest
 * @param shortest, longest  days from the first to the last
 */
export function restStretches(fanHours: Float64Array, shortest: number, longest: number): Stretch[] {
  const out: Stretch[] = [];
  for (let from = 0; from < fanHours.length; from++) {
    let sum = fanHours[from];
    for (let to = from + 1; to < fanHours.length && to - from <= longest; to++) {
      sum += fanHours[to];
      if (!(sum <= MOST_FAN_H)) break;
      if (to - from >= shortest) out.push([from, to]);
    }
  }
  return out;
}
