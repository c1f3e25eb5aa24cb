import type { BinReview } from '../analysis/types.ts';
import type { Finding } from '../season/loaded.ts';

/** Bins whose fan log seems to keep another clock than the plenum's: what hangs on the time of day is in doubt. */
export function clockDoubts(findings: readonly Finding[], bins: readonly BinReview[]): string[] {
  return bins.flatMap(({ bin }) =>
    findings
      .filter((one) => one.kind === 'clock' && one.binId === bin.id && one.where.startsWith('fan '))
      .map((one) => `${bin.name}: fan hours priced by time of day are in doubt. ${one.text}`),
  );
}
