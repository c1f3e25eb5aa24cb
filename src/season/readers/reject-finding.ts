import type { Finding } from '../loaded.ts';
import type { Tally } from './tally.ts';

/** Tell on the data-quality page that a file has cells that could not be read. */
export function rejectFinding(tally: Tally): Finding {
  const counts = new Map<string | null, number>();
  for (const { column } of tally.rejects) {
    counts.set(column, (counts.get(column) ?? 0) + 1);
  }
  const parts = [...counts]
    .map(([column, count]) => {
      const one = count === 1;
      return column === null
        ? `${count} whole ${one ? 'row' : 'rows'}`
        : `${count} ${one ? 'cell' : 'cells'} of ${column}`;
    })
    .join(', ');
  return {
    kind: 'reject',
    where: tally.path,
    binId: null,
    fromMs: null,
    toMs: null,
    cells: tally.rejected,
    text: `${tally.path}: ${tally.rejected} ${tally.rejected === 1 ? 'value' : 'values'} could not be read (${parts}).`,
    advice: 'See rejects.csv for each with its line and the reason.',
  };
}
