import type { Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { toRows } from './any-rows.ts';
import type { FigureSpec } from './form-figure.ts';
import { formTable, MOST_ROWS } from './form-table.ts';

/** The numbers of a figure as a table to fold under it; null where there are too many to read. */
export function figureNumbers(spec: FigureSpec, units: Units): Table | null {
  const { rows } = toRows(spec.rows);
  if (spec.numbers === false || rows.length > MOST_ROWS) return null;
  const { x, y, by, low, high, of, unit } = spec;
  const told = of === undefined && unit === undefined ? {} : { of, unit };
  const columns = Object.fromEntries(
    [x, by, y, low, high].flatMap((name) =>
      name === undefined ? [] : [[name, name === x || name === by ? {} : told]],
    ),
  );
  return formTable(rows, { title: `${spec.title}: the numbers`, columns, folded: true }, '', units).table;
}
