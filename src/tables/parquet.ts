import type { Table } from 'apache-arrow';
import { type ColumnSource, parquetWriteBuffer } from 'hyparquet-writer';
import { integers, numbers, texts } from './arrow.ts';
import { type ColumnDef, TABLES, type TableName } from './columns.ts';

/**
 * A loaded table as a Parquet file: the columns of its Arrow file by the same names, instants as UTC milliseconds, missing numbers
 * null, units and descriptions as the file's key-value pairs (`unit.temp_c`). Same table, same bytes.
 *
 * @source  Apache Parquet format 2 (logical types of timestamps and strings)
 */
export function toParquetFile(name: TableName, table: Table): Uint8Array {
  const defs: readonly ColumnDef[] = TABLES[name];
  const notes = defs.flatMap((def) => [
    ...(def.unit === null ? [] : [{ key: `unit.${def.name}`, value: def.unit }]),
    { key: `description.${def.name}`, value: def.description },
  ]);
  return new Uint8Array(
    parquetWriteBuffer({
      columnData: defs.map((def) => columnOf(def, table)),
      kvMetadata: [{ key: 'table', value: name }, ...notes],
      createdBy: 'fanbook',
    }),
  );
}

function columnOf({ name, type }: ColumnDef, table: Table): ColumnSource {
  switch (type) {
    case 'time':
      return {
        name,
        type: 'TIMESTAMP',
        nullable: true,
        data: Array.from(numbers(table, name), (ms) => (Number.isNaN(ms) ? null : new Date(ms))),
      };
    case 'number':
      return {
        name,
        type: 'DOUBLE',
        nullable: true,
        data: Array.from(numbers(table, name), (one) => (Number.isNaN(one) ? null : one)),
      };
    case 'integer':
    case 'flags':
      return { name, type: 'INT32', nullable: false, data: Int32Array.from(integers(table, name)) };
    case 'text':
      return { name, type: 'STRING', nullable: false, data: texts(table, name) };
  }
}
