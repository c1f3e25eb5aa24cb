import { Type, tableFromIPC } from 'apache-arrow';
import { readParquet } from 'parquet-wasm/node';
import { describe, expect, it } from 'vitest';
import { integers, numbers, texts, toArrow } from '../../src/tables/arrow.ts';
import { TABLES, type TableName } from '../../src/tables/columns.ts';
import { toParquetFile } from '../../src/tables/parquet.ts';
import { loadedSample } from '../support/sample.ts';

const plenum = () =>
  toArrow('plenum', {
    time: Float64Array.of(Date.UTC(2024, 9, 4), Date.UTC(2024, 9, 4, 1)),
    bin: { codes: Int32Array.of(1, 0), values: ['B1', 'B2'] },
    temp_c: Float64Array.of(10.5, Number.NaN),
    rh: Float64Array.of(0.6, 0.61),
    static_pressure_pa: Float64Array.of(Number.NaN, Number.NaN),
    flags: Uint8Array.of(0, 3),
    file: { codes: Int32Array.of(0, 0), values: ['logs/ü.csv'] },
  });

/** As another library, written apart from the one that writes, reads it. */
const read = (bytes: Uint8Array) => tableFromIPC(readParquet(bytes).intoIPCStream());

describe('Parquet tables', () => {
  it('come back through an independent reader: instants in UTC, null for NaN, texts, flags', () => {
    const table = read(toParquetFile('plenum', plenum()));
    expect(table.schema.fields.map(({ name }) => name)).toEqual(TABLES.plenum.map(({ name }) => name));
    const time = table.schema.fields[0].type;
    expect([time.typeId, String(time)]).toEqual([Type.Timestamp, 'Timestamp<MILLISECOND, UTC>']);
    expect([0, 1].map((row) => Number(table.getChild('time')?.get(row)))).toEqual([
      Date.UTC(2024, 9, 4),
      Date.UTC(2024, 9, 4, 1),
    ]);
    expect([0, 1].map((row) => table.getChild('temp_c')?.get(row))).toEqual([10.5, null]);
    expect(table.getChild('static_pressure_pa')?.nullCount).toBe(2);
    expect([0, 1].map((row) => table.getChild('bin')?.get(row))).toEqual(['B2', 'B1']);
    expect(table.getChild('file')?.get(0)).toBe('logs/ü.csv');
    expect([0, 1].map((row) => table.getChild('flags')?.get(row))).toEqual([0, 3]);
    expect(table.schema.metadata.get('unit.static_pressure_pa')).toBe('Pa');
  });

  it('give the same bytes for the same input', () => {
    expect(Buffer.compare(toParquetFile('plenum', plenum()), toParquetFile('plenum', plenum()))).toBe(0);
  });

  it('hold the cells of the sample’s tables, each of small ones and every 199th row of long ones', async () => {
    const { tables } = await loadedSample('sorrel-fork');
    for (const name of Object.keys(TABLES) as TableName[]) {
      const back = read(toParquetFile(name, tables[name]));
      expect(back.numRows, name).toBe(tables[name].numRows);
      const step = back.numRows > 5000 ? 199 : 1;
      const rows = Array.from({ length: Math.ceil(back.numRows / step) }, (_, i) => i * step);
      for (const def of TABLES[name]) {
        const cells = rows.map((row) => back.getChild(def.name)?.get(row));
        const want =
          def.type === 'text'
            ? texts(tables[name], def.name)
            : def.type === 'integer' || def.type === 'flags'
              ? [...integers(tables[name], def.name)]
              : Array.from(numbers(tables[name], def.name), (one) => (Number.isNaN(one) ? null : one));
        const told = def.type === 'time' ? cells.map(Number) : cells;
        expect(
          told.findIndex((cell, i) => cell !== want[rows[i]]),
          `${name}.${def.name}`,
        ).toBe(-1);
      }
    }
  });
});
