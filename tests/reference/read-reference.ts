import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** A row of a reference file, all cells as text. */
export type ReferenceRow = Readonly<Record<string, string>>;

/**
 * The rows of `tests/reference/<name>.csv`: published values with source and provenance, copied, never computed.
 * The column `misfit`, where not empty, tells why the kit is not expected to give the row's value.
 */
export function readReference(name: string): ReferenceRow[] {
  const text = readFileSync(new URL(`./${name}.csv`, import.meta.url), 'utf8');
  return parse(text, { columns: true, skip_empty_lines: true });
}

/** Half a unit of the last digit that is printed: `0.8` -> 0.05, `275` -> 0.5. */
export function halfDigit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** The middle value. @throws RangeError when there is none */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('no values');
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Test names of rows that nobody here read at their source say so. */
export const provenanceNote = (row: ReferenceRow): string => (row.provenance === 'seen' ? '' : ` (${row.provenance})`);

/** The tolerance that a row states: `0.7 %` of the value, `0.05` in its unit, or half of the last printed digit where it states none. */
export function toleranceOf(tolerance: string, published: string): number {
  if (tolerance === '') return halfDigit(published);
  const [size, percent] = tolerance.split(' ');
  return percent === '%' ? (Number(size) / 100) * Math.abs(Number(published)) : Number(size);
}
