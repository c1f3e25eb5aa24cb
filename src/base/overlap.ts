import type { Estimate } from './estimate.ts';

/** Do two intervals overlap (ends that touch do); null where one is missing. */
export function overlap({ interval: a }: Estimate, { interval: b }: Estimate): boolean | null {
  if (a === null || b === null) return null;
  return a[0] <= b[1] && b[0] <= a[1];
}
