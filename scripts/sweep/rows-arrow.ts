import {
  Bool,
  Field,
  Float64,
  makeData,
  makeVector,
  RecordBatch,
  Schema,
  Struct,
  Table,
  tableFromIPC,
  Utf8,
  vectorFromArray,
} from 'apache-arrow';
import { SWEEP_COLUMNS, type SweepColumn, type SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';
import { toIpcFile } from '../../src/tables/arrow.ts';

const TYPES = { text: () => new Utf8(), number: () => new Float64(), boolean: () => new Bool() };

/** A sweep's rows as an Arrow IPC file. Same rows, same bytes. */
export function rowsArrow(rows: readonly SweepRow[]): Uint8Array {
  const fields = SWEEP_COLUMNS.map(({ name, type, unit, description }) => {
    const notes = new Map([['description', description]]);
    if (unit !== null) notes.set('unit', unit);
    return new Field(name, TYPES[type](), true, notes);
  });
  const schema = new Schema(fields, new Map([['table', 'strategies']]));
  const children = SWEEP_COLUMNS.map((column) => vectorOf(column, rows).data[0]);
  const struct = makeData({ type: new Struct(fields), length: rows.length, nullCount: 0, children });
  return toIpcFile(new Table(schema, [new RecordBatch(schema, struct)]));
}

/** Rows as they were written. @throws where the bytes are no such file, or lack a column */
export function rowsOfArrow(bytes: Uint8Array): SweepRow[] {
  const table = tableFromIPC(bytes);
  const columns = SWEEP_COLUMNS.map(({ name }) => {
    const column = table.getChild(name);
    if (column === null) throw new Error(`no column ${name}`);
    return { name, column };
  });
  return Array.from({ length: table.numRows }, (_, i) =>
    Object.fromEntries(columns.map(({ name, column }) => [name, column.get(i) ?? null])),
  );
}

function vectorOf({ name, type }: SweepColumn, rows: readonly SweepRow[]) {
  const cells = rows.map((row) => row[name] ?? null);
  if (rows.length === 0) return makeVector(makeData({ type: TYPES[type]() as Utf8, length: 0 }));
  return vectorFromArray(cells as never[], TYPES[type]() as Utf8);
}
