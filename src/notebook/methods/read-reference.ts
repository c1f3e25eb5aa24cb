import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** A row of a reference file, all cells as text. */
export type ReferenceRow = Readonly<Record<string, string>>;

export type ReferenceName =
  | 'airflow'
  | 'airflow_constants'
  | 'cooling'
  | 'drying'
  | 'emc'
  | 'emc_constants'
  | 'fans'
  | 'grain_properties'
  | 'money'
  | 'posted_schedule'
  | 'psychrometrics'
  | 'storage_time';

/** The files stand once, with the tests; the methods page reads the same ones. */
const FOLDER = new URL('../../../tests/reference/', import.meta.url);

/**
 * The rows of `tests/reference/<name>.csv`: published values with source and provenance, copied, never computed.
 * The column `misfit`, where not empty, tells why the kit is not expected to give the row's value.
 *
 * @throws Error when the file is not there
 */
export function readReference(name: ReferenceName): ReferenceRow[] {
  return parse(readFileSync(new URL(`${name}.csv`, FOLDER), 'utf8'), { columns: true, skip_empty_lines: true });
}

/** Half a unit of the last digit that is printed: `0.8` -> 0.05, `275` -> 0.5. */
export function halfDigit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** The tolerance that a row states: `0.7 %` of the value, `0.05` in its unit, or half of the last printed digit where it states none. */
export function toleranceOf(tolerance: string, published: string): number {
  if (tolerance === '') return halfDigit(published);
  const [size, percent] = tolerance.split(' ');
  return percent === '%' ? (Number(size) / 100) * Math.abs(Number(published)) : Number(size);
}
