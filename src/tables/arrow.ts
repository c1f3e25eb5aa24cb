import {
  Dictionary,
  Field,
  Float64,
  Int16,
  Int32,
  makeData,
  RecordBatch,
  Schema,
  Struct,
  Table,
  TimestampMillisecond,
  tableFromIPC,
  tableToIPC,
  Uint8,
  Utf8,
  type Vector,
  vectorFromArray,
} from 'apache-arrow';
import { type ColumnDef, TABLES, type TableName } from './columns.ts';

/** Repeated text: row i says `values[codes[i]]`. */
export interface TextColumn {
  /** [rows] */
  codes: Int32Array;
  values: string[];
}

/** A column in memory: times (ms, UTC) and numbers as Float64Array with NaN for missing. */
export type RawColumn = Float64Array | Int16Array | Uint8Array | TextColumn;

/**
 * Build the Arrow table of that name. NaN becomes null, and the slot under a null keeps its NaN.
 *
 * @param name     a table of TABLES
 * @param columns  one per column of the table, all of one length [rows]
 * @throws         RangeError when a column is lacking or has another length
 */
export function toArrow(name: TableName, columns: Readonly<Record<string, RawColumn>>): Table {
  const defs: readonly ColumnDef[] = TABLES[name];
  const rows = lengthOf(columns[defs[0].name]);
  const fields: Field[] = [];
  const children = defs.map((def, index) => {
    const raw = columns[def.name];
    if (raw === undefined || lengthOf(raw) !== rows) {
      throw new RangeError(`table ${name}: column ${def.name} has ${raw ? lengthOf(raw) : 'no'} rows, not ${rows}`);
    }
    const data = columnData(def, raw, index);
    const notes = new Map([['description', def.description]]);
    if (def.unit !== null) notes.set('unit', def.unit);
    fields.push(new Field(def.name, data.type, def.type === 'number', notes));
    return data;
  });
  const schema = new Schema(fields, new Map([['table', name]]));
  const struct = makeData({ type: new Struct(fields), length: rows, nullCount: 0, children });
  return new Table(schema, [new RecordBatch(schema, struct)]);
}

function lengthOf(column: RawColumn | undefined): number {
  if (column === undefined) return 0;
  return 'codes' in column ? column.codes.length : column.length;
}

function columnData(def: ColumnDef, raw: RawColumn, dictionaryId: number) {
  switch (def.type) {
    case 'time': {
      const source = raw as Float64Array;
      const data = new BigInt64Array(source.length);
      for (let i = 0; i < source.length; i++) data[i] = BigInt(Math.round(source[i]));
      return makeData({ type: new TimestampMillisecond('UTC'), data, nullCount: 0 });
    }
    case 'number': {
      const data = raw as Float64Array;
      const { nullBitmap, nullCount } = nullsOf(data);
      return makeData({ type: new Float64(), data, nullBitmap, nullCount });
    }
    case 'integer':
      return makeData({ type: new Int16(), data: raw as Int16Array, nullCount: 0 });
    case 'flags':
      return makeData({ type: new Uint8(), data: raw as Uint8Array, nullCount: 0 });
    case 'text': {
      const { codes, values } = raw as TextColumn;
      // The library numbers dictionaries by a running count; a fixed id keeps the bytes the same.
      const type = new Dictionary(new Utf8(), new Int32(), dictionaryId);
      return makeData({ type, data: codes, nullCount: 0, dictionary: vectorFromArray(values, new Utf8()) });
    }
  }
}

function nullsOf(data: Float64Array): { nullBitmap: Uint8Array; nullCount: number } {
  const nullBitmap = new Uint8Array(((data.length + 63) >> 6) << 3);
  let nullCount = 0;
  for (let i = 0; i < data.length; i++) {
    if (Number.isNaN(data[i])) nullCount += 1;
    else nullBitmap[i >> 3] |= 1 << (i & 7);
  }
  return { nullBitmap, nullCount };
}

/** A column of times or numbers as [rows] Float64Array: times in ms UTC, NaN where null. */
export function numbers(table: Table, column: string): Float64Array {
  const vector = vectorOf(table, column);
  const out = new Float64Array(table.numRows);
  let at = 0;
  for (const data of vector.data) {
    const values = data.values as Float64Array | BigInt64Array;
    for (let i = 0; i < data.length; i++, at++) out[at] = data.getValid(i) ? Number(values[i]) : Number.NaN;
  }
  return out;
}

/** A column of small whole numbers or flags, [rows]. */
export function integers(table: Table, column: string): Int16Array {
  const vector = vectorOf(table, column);
  return Int16Array.from({ length: table.numRows }, (_, i) => vector.get(i) as number);
}

/** A column of repeated text, [rows]. */
export function texts(table: Table, column: string): string[] {
  const { codes, values } = textColumn(table, column);
  return Array.from(codes, (code) => values[code]);
}

/** A column of repeated text as codes and values. */
export function textColumn(table: Table, column: string): TextColumn {
  const vector = vectorOf(table, column);
  const values: string[] = [];
  const codeOf = new Map<string, number>();
  const codes = new Int32Array(table.numRows);
  let at = 0;
  for (const data of vector.data) {
    const dictionary = (data.dictionary as Vector<Utf8>).toArray() as unknown as ArrayLike<string>;
    const own = Array.from(dictionary, (text) => {
      const known = codeOf.get(text);
      if (known !== undefined) return known;
      codeOf.set(text, values.length);
      values.push(text);
      return values.length - 1;
    });
    const source = data.values as Int32Array;
    for (let i = 0; i < data.length; i++, at++) codes[at] = own[source[i]];
  }
  return { codes, values };
}

function vectorOf(table: Table, column: string): Vector {
  const vector = table.getChild(column);
  if (vector === null) {
    const names = table.schema.fields.map((field) => field.name).join(', ');
    throw new RangeError(`no column ${column}; there are ${names}`);
  }
  return vector;
}

/** The table as an Arrow IPC file. Same table, same bytes. */
export function toIpcFile(table: Table): Uint8Array {
  return tableToIPC(table, 'file');
}

export function fromIpc(bytes: Uint8Array): Table {
  return tableFromIPC(bytes);
}
