import { parquetReadObjects } from 'hyparquet';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { SWEEP_COLUMNS, type SweepRow } from '../../src/analysis/strategies/sweep-columns.ts';

const TYPES = { text: 'STRING', number: 'DOUBLE', boolean: 'BOOLEAN' } as const;

/** Rows as a Parquet file. Same rows, same bytes. */
export function rowsParquet(rows: readonly SweepRow[]): Uint8Array {
  const columnData = SWEEP_COLUMNS.map(({ name, type }) => ({
    name,
    data: rows.map((row) => row[name] ?? null),
    type: TYPES[type],
    nullable: true,
  }));
  return new Uint8Array(parquetWriteBuffer({ columnData }));
}

/** @throws Error of the library where the bytes are no Parquet file */
export async function rowsOfParquet(bytes: Uint8Array): Promise<SweepRow[]> {
  const file = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  const read = await parquetReadObjects({ file });
  return read.map((cells) => Object.fromEntries(SWEEP_COLUMNS.map(({ name }) => [name, cells[name] ?? null])));
}
