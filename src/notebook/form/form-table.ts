import type { Estimate } from '../../base/estimate.ts';
import { localDayStart, toLocalMs } from '../../base/zone.ts';
import type { Cell, Column, Known, OwnNumber, Table, TimeKind } from '../../report/page.ts';
import type { Quantity } from '../../report/quantities.ts';
import type { Units } from '../../report/units.ts';
import { amount, isAmount, isEstimate } from './amount.ts';
import { type AnyRows, toRows } from './any-rows.ts';
import { headingOf, namedUnit } from './named-units.ts';

/** How a column is told; what is left out follows from its name (`temp_f`) or its values. */
export interface ColumnSpec {
  label?: string;
  /** a kind of number, `day`, `moment` or `month`; null: text */
  of?: Quantity | TimeKind | null;
  /** the unit that its numbers are in, where they are not as the review tells them: `degF`, `ft`, `%` */
  unit?: string;
  /** how numbers without an interval are known */
  known?: Known;
  /** lowest and highest in bold */
  marked?: boolean;
}

export interface TableSpec {
  /** over the table; left out: the section's title */
  title?: string;
  /** stem of its CSV; left out: from the title */
  id?: string;
  /** which columns, in which order, under which label; left out: all as they come */
  columns?: Readonly<Record<string, string | ColumnSpec>>;
  /** why a cell is missing where it does not say so itself */
  missing?: string;
  /** said where there are no rows */
  empty?: string;
  /** left out: true from 25 rows on */
  folded?: boolean;
  /** so many rows at most; the rest is counted in a note. 400 */
  most?: number;
}

/** Rows that fold away by themselves. */
const LONG = 25;
export const MOST_ROWS = 400;

/**
 * Rows as a table of a page.
 *
 * @param title  where the spec has none
 * @returns      the table, and how many rows it leaves out
 * @throws       TypeError, RangeError for a column that is not there, or values that no column can show
 */
export function formTable(from: AnyRows, spec: TableSpec, title: string, units: Units): { table: Table; cut: number } {
  const { names, rows } = toRows(from);
  const wanted = spec.columns === undefined ? names : Object.keys(spec.columns);
  const unknown = wanted.filter((name) => !names.includes(name));
  if (unknown.length > 0 && rows.length > 0) {
    throw new RangeError(`there is no column ${unknown.join(', ')}; the rows have ${names.join(', ')}`);
  }
  const shown = rows.slice(0, spec.most ?? MOST_ROWS);
  const missing: Cell = { value: null, why: spec.missing ?? 'Not known.' };
  const told = wanted.map((name) => {
    const given = spec.columns?.[name];
    const of: ColumnSpec = typeof given === 'string' ? { label: given } : (given ?? {});
    return toldColumn(
      name,
      of,
      shown.map((row) => row[name]),
      missing,
      units,
    );
  });
  const caption = spec.title ?? title;
  return {
    table: {
      id: spec.id ?? caption,
      caption,
      columns: told.map(({ column }) => column),
      rows: shown.map((_, i) => Object.fromEntries(told.map(({ column, cells }) => [column.key, cells[i]]))),
      empty: spec.empty ?? 'There are no rows.',
      folded: spec.folded ?? shown.length > LONG,
    },
    cut: rows.length - shown.length,
  };
}

function toldColumn(key: string, spec: ColumnSpec, values: readonly unknown[], missing: Cell, units: Units) {
  const label = spec.label ?? headingOf(key);
  const { quantity, unit } = kindOf(key, spec, values, units);
  const column: Column = { key, label, quantity, known: spec.known ?? knownOf(values), marked: spec.marked };
  return { column, cells: values.map((value) => cellOf(key, value, quantity, unit, missing, units)) };
}

/** How all of a column's numbers are known, where they say it alike. */
function knownOf(values: readonly unknown[]): Known | undefined {
  const all = [...new Set(values.flatMap((value) => (isAmount(value) ? [value.known] : [])))];
  return all.length === 1 ? all[0] : undefined;
}

/** What a column's values are of: as stated, as they say themselves, by its name, by what they look like. */
function kindOf(
  key: string,
  { of, unit }: ColumnSpec,
  values: readonly unknown[],
  units: Units,
): { quantity: Column['quantity']; unit?: string } {
  if (of !== undefined) return { quantity: of, unit };
  const there = values.filter((value) => !isMissing(value));
  const kinds = [...new Set(there.flatMap((value) => (isAmount(value) ? [value.of] : [])))];
  if (kinds.length === 1 && there.every((value) => isAmount(value) || isReason(value))) return { quantity: kinds[0] };
  // Of several kinds, each number is said with its unit, as words.
  if (kinds.length > 0) return { quantity: null };
  if (there.some(isEstimate)) throw new TypeError(`column ${key}: estimates need their kind, e.g. { of: 'money' }`);
  if (there.length > 0 && there.every((value) => value instanceof Date)) {
    const midnights = (there as Date[]).every((at) => toLocalMs(units.zone, at.getTime()) % DAY_MS === 0);
    return { quantity: midnights ? 'day' : 'moment' };
  }
  if (there.some((value) => typeof value !== 'number')) {
    if (there.length > 0 && there.every(isMonth)) return { quantity: 'month' };
    return { quantity: there.length > 0 && there.every(isDay) ? 'day' : null };
  }
  const named = namedUnit(key);
  if (named !== null) return { quantity: named.of, unit: named.unit };
  return { quantity: there.length === 0 ? null : there.every(Number.isInteger) ? 'count' : 'number' };
}

const DAY_MS = 86_400_000;
const isDay = (value: unknown): value is string => typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);
const isMonth = (value: unknown) => typeof value === 'string' && /^\d{4}-\d{2}$/.test(value);
const isMissing = (value: unknown) =>
  value === null || value === undefined || (typeof value === 'number' && Number.isNaN(value));
const isReason = (value: unknown): value is { value: null; why: string } =>
  typeof value === 'object' && value !== null && 'why' in value && 'value' in value && value.value === null;

function cellOf(
  key: string,
  value: unknown,
  quantity: Column['quantity'],
  unit: string | undefined,
  missing: Cell,
  units: Units,
): Cell {
  if (isMissing(value)) return missing;
  if (isReason(value)) return { value: null, why: value.why };
  if (isAmount(value)) return quantity === null ? wordsOf(value, units) : value.amount;
  if (quantity === null) return wordOf(key, value, units);
  if (value instanceof Date) return value.getTime();
  if (quantity === 'day' && isDay(value)) {
    const [year, month, day] = value.split('-').map(Number);
    return localDayStart(units.zone, year, month, day);
  }
  if (quantity === 'month' && typeof value === 'string') return value;
  if (isTimeKind(quantity) || quantity === 'own') return typeof value === 'number' ? value : wordOf(key, value, units);
  if (typeof value !== 'number' && !isEstimate(value)) {
    throw new TypeError(`column ${key} is of ${quantity}; "${String(value).slice(0, 40)}" is no number`);
  }
  return amount(quantity, value as number | Estimate, unit).amount;
}

const isTimeKind = (of: Column['quantity']): of is TimeKind => of === 'day' || of === 'moment' || of === 'month';

function wordsOf({ of, amount: number }: OwnNumber, units: Units): Cell {
  if (typeof number === 'object' && number.value === null) return { value: null, why: number.why ?? 'Not known.' };
  return units.say(of, number);
}

function wordOf(key: string, value: unknown, units: Units): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value instanceof Date) return units.dateTime(value.getTime());
  if (typeof value === 'number') return String(value);
  throw new TypeError(
    `column ${key}: a table cannot show ${JSON.stringify(value).slice(0, 60)}; name the columns to show`,
  );
}
