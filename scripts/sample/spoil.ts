import type { PlantedFault } from './faults.ts';

/** Replace or add lines, counted as they stand in the file; the header is line 1. */
export function spoil(
  lines: string[],
  file: string,
  changes: readonly { at: number; what: string; change: (line: string) => string | readonly string[] }[],
  faults: PlantedFault[],
): void {
  // From the end on, so that earlier line numbers stay.
  for (const { at, change } of [...changes].sort((a, b) => b.at - a.at)) {
    const made = change(lines[at - 1]);
    lines.splice(at - 1, 1, ...(typeof made === 'string' ? [made] : made));
  }
  faults.push({
    kind: 'reject',
    where: file,
    bin: null,
    quantity: null,
    fromMs: Number.NaN,
    toMs: Number.NaN,
    count: changes.length,
    expect: `in rejects.csv: ${changes.map((one) => one.what).join('; ')}`,
  });
}

/** The line with one cell changed */
export const cell = (line: string, index: number, value: string): string => {
  const cells = line.split(',');
  cells[index] = value;
  return cells.join(',');
};
