/** A moment with the hours in which it may lie. */
export interface Dated {
  fanHours: number;
  interval: readonly [number, number];
}

/**
 * The most sensors along a cable that a front can have passed one after the other: no sensor earlier than one nearer to
 * where the air enters, by more than both intervals leave open.
 *
 * @param dated  from where the air enters
 * @returns      [dated], true where it fits
 */
export function inOrder(dated: readonly Dated[]): boolean[] {
  const length = dated.map(() => 1);
  const before = dated.map(() => -1);
  dated.forEach((one, i) => {
    for (let k = 0; k < i; k++) {
      const fits = dated[k].interval[0] <= one.interval[1];
      if (fits && length[k] + 1 > length[i]) {
        length[i] = length[k] + 1;
        before[i] = k;
      }
    }
  });
  const kept = dated.map(() => false);
  let at = length.indexOf(Math.max(...length));
  while (at >= 0) {
    kept[at] = true;
    at = before[at];
  }
  return kept;
}
