import type { Table } from 'apache-arrow';
import { integers, numbers, textColumn } from '../../tables/arrow.ts';

/** Rows of a table that belong to one thing (a fan, a bin, a role), in time order. */
export interface Rows {
  id: string;
  /** rows of the table, [readings] */
  rows: Int32Array;
  /** [readings], ms */
  time: Float64Array;
  /** what the loader flagged, [readings] */
  flags: Int16Array;
  /** [readings] of a number column; NaN is missing */
  column: (name: string) => Float64Array;
}

/** Cut a table by a text column, in order of first appearance. */
export function rowsBy(table: Table, key: string): Rows[] {
  const time = numbers(table, 'time');
  const flags = integers(table, 'flags');
  const ids = textColumn(table, key);
  const found = new Map<number, number[]>();
  for (let row = 0; row < time.length; row++) {
    const its = found.get(ids.codes[row]);
    if (its === undefined) found.set(ids.codes[row], [row]);
    else its.push(row);
  }
  const whole = new Map<string, Float64Array>();
  return [...found].map(([code, its]) => {
    const rows = Int32Array.from(its.sort((a, b) => time[a] - time[b] || a - b));
    const column = (name: string) => {
      const all = whole.get(name) ?? numbers(table, name);
      whole.set(name, all);
      return pick(all, rows);
    };
    return {
      id: ids.values[code],
      rows,
      time: pick(time, rows),
      flags: Int16Array.from(rows, (row) => flags[row]),
      column,
    };
  });
}

function pick(values: Float64Array, rows: Int32Array): Float64Array {
  const out = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) out[i] = values[rows[i]];
  return out;
}
