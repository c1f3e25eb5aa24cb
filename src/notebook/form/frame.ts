import type { DataFrame } from 'danfojs-node';
import { type AnyRows, DESCRIBED, toRows } from './any-rows.ts';

/**
 * Rows as a danfojs data frame, for those who like frames. The library is loaded when first asked for (some seconds); other notebooks do
 * not pay for it. What is missing is NaN; moments are ISO 8601 text in UTC; estimates give their middle.
 *
 * `describe()` counts what is there: the library's own gives no mean for a column with a single missing value. Groups do neither: leave
 * rows with missing numbers out first, `frame.dropNa({ axis: 1 })`.
 *
 * @param columns  which; left out: all
 */
export async function frame(from: AnyRows, columns?: readonly string[]): Promise<DataFrame> {
  const { names, rows } = toRows(from);
  const wanted = columns ?? names;
  const unknown = wanted.filter((name) => !names.includes(name));
  if (unknown.length > 0) {
    throw new RangeError(`there is no column ${unknown.join(', ')}; the rows have ${names.join(', ')}`);
  }
  used = true;
  const { DataFrame } = await import('danfojs-node');
  const data = Object.fromEntries(wanted.map((name) => [name, rows.map((row) => plainOf(row[name]))]));
  const made = new DataFrame(data);
  made.describe = () => {
    const numeric = made.columns.filter((_, i) => NUMERIC.has(made.ctypes.values[i] as string));
    const told = numeric.map((name) => made[name].describe().values as number[]);
    const index = ['count', 'mean', 'std', 'min', 'median', 'max', 'variance'];
    const described = new DataFrame(
      index.map((_, i) => told.map((of) => of[i])),
      { columns: numeric, index },
    );
    DESCRIBED.add(described);
    return described;
  };
  return made;
}

let used = false;

/** Whether a frame was asked for in this process. */
export function framesUsed(): boolean {
  return used;
}

const NUMERIC = new Set(['float32', 'int32']);

function plainOf(value: unknown): string | number | boolean {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  if (value instanceof Date) return value.toISOString();
  if (typeof value === 'object' && value !== null) {
    if ('amount' in value) return plainOf(value.amount);
    if ('value' in value) return plainOf(value.value);
  }
  return Number.NaN;
}
