import type { ColumnTable } from 'arquero';
import { amount, type ToldNumber } from './amount.ts';
import { namedUnit } from './named-units.ts';

/** What a notebook may hand to a table or a figure: rows as they are, an arquero table, a data frame. */
export type AnyRows = readonly object[] | ColumnTable | FrameLike;

/** The part of a danfojs data frame that is read; the library is not loaded for it. */
export interface FrameLike {
  readonly columns: readonly string[];
  readonly index: readonly (string | number)[];
  readonly values: unknown;
}

/** Frames that tell count, mean, spread … of others' columns: each row is of another kind than the column's name says. */
export const DESCRIBED = new WeakSet<object>();

export interface Rows {
  /** in their order */
  names: readonly string[];
  rows: readonly Readonly<Record<string, unknown>>[];
}

/**
 * Rows of whatever kind as plain rows with the names of their columns. A data frame whose index names its rows keeps it as the column
 * `row`; groups and orders of an arquero table are respected.
 *
 * @throws TypeError for what holds no rows
 */
export function toRows(from: AnyRows): Rows {
  if (Array.isArray(from)) {
    const names = new Set<string>();
    for (const row of from) {
      if (typeof row !== 'object' || row === null) throw new TypeError(notRows(row));
      for (const name of Object.keys(row)) names.add(name);
    }
    return { names: [...names], rows: from as Readonly<Record<string, unknown>>[] };
  }
  if (typeof from === 'object' && from !== null && 'columnNames' in from) {
    return { names: from.columnNames(), rows: from.objects() as Record<string, unknown>[] };
  }
  if (typeof from === 'object' && from !== null && 'values' in from && 'columns' in from) {
    const { columns, index, values } = from as FrameLike;
    if (DESCRIBED.has(from)) return describedRows(from as FrameLike);
    const named = index.some((label, i) => label !== i);
    return {
      names: named ? ['row', ...columns] : [...columns],
      rows: (values as unknown[][]).map((cells, i) => ({
        ...(named ? { row: String(index[i]) } : {}),
        ...Object.fromEntries(columns.map((name, c) => [name, cells[c]])),
      })),
    };
  }
  throw new TypeError(notRows(from));
}

/** Counts are counts, a spread is a difference; the variance, in squared units, stays in the frame. */
function describedRows({ columns, index, values }: FrameLike): Rows {
  const rows = (values as number[][]).flatMap((cells, r) => {
    const row = String(index[r]);
    if (row === 'variance') return [];
    const of = (name: string, c: number) => [name, describedNumber(name, row, cells[c])] as const;
    return [{ row, ...Object.fromEntries(columns.map(of)) }];
  });
  return { names: ['row', ...columns], rows };
}

function describedNumber(column: string, row: string, value: number): ToldNumber {
  if (row === 'count') return amount('count', value);
  const named = namedUnit(column);
  if (named === null) return amount('number', value);
  if (row !== 'std') return amount(named.of, value, named.unit);
  if (named.of === 'temperature') return amount('temperature difference', value, named.unit ?? 'K');
  return named.of === 'moisture'
    ? amount('points', named.unit === '%' ? value : 100 * value)
    : amount(named.of, value, named.unit);
}

const notRows = (given: unknown) =>
  `rows are a list of objects, an arquero table or a data frame; given is ${given === null ? 'null' : Array.isArray(given) ? 'a list' : typeof given}`;
