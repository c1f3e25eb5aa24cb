import { mean, medianSorted, quantileSorted } from 'simple-statistics';

function sorted(values: ArrayLike<number>): number[] {
  return Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .sort((a, b) => a - b);
}

/** Middle value, missing ones left out; NaN when none is left. */
export function median(values: ArrayLike<number>): number {
  const kept = sorted(values);
  return kept.length === 0 ? Number.NaN : medianSorted(kept);
}

/** Quantile p (0 to 1), missing values left out; NaN when none is left. */
export function quantile(values: ArrayLike<number>, p: number): number {
  const kept = sorted(values);
  return kept.length === 0 ? Number.NaN : quantileSorted(kept, p);
}

/**
 * Mean without the outer values: from each end the whole number of values that `trim` of them comes to is left out.
 *
 * @param trim  share left out at each end, 0 <= trim < 0.5
 * @returns     NaN when there is no value
 */
export function trimmedMean(values: ArrayLike<number>, trim: number): number {
  const kept = sorted(values);
  if (kept.length === 0) return Number.NaN;
  const cut = Math.floor(kept.length * trim);
  return mean(kept.slice(cut, kept.length - cut));
}
