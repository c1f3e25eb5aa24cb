import type { Finding } from '../loaded.ts';
import type { Tally } from './tally.ts';

/** Tell on the data-quality page that a file has cells that could not be read. */
export function rejectFinding(tally: Tally): Finding {
  const counts = new Map<string, number>();
  for (const { column } of tally.rejects) {
    const key = column === null ? 'whole rows' : `cells of ${column}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const parts = [...counts].map(([what, count]) => `${count} ${what}`).join(', ');
  return {
    kind: 'reject',
    where: tally.path,
    binId: null,
    fromMs: null,
    toMs: null,
    cells: tally.rejected,
    text: `${tally.path}: ${tally.rejected} values could not be read (${parts}).`,
    advice: 'See rejects.csv for each with its line and the reason.',
  };
}
