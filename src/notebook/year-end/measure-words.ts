import type { BinReview } from '../../analysis/types.ts';

export const PROBE_FIRST = 'Probe the grain and meter its moisture before a fan is stopped on these numbers.';
export const WEATHER = 'Another year is another weather; the saving is this season’s.';
export const ELECTRICIAN =
  'Controls are wired by a licensed electrician; a fan on a controller starts without warning.';

/** Two fans of a bin are its fans. */
export function fanWord({ bin }: BinReview): string {
  return bin.fanIds.length === 1 ? 'fan' : 'fans';
}
