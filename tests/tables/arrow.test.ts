import { describe, expect, it } from 'vitest';
import { fromIpc, integers, numbers, texts, toArrow, toIpcFile } from '../../src/tables/arrow.ts';

const columns = () => ({
  time: Float64Array.of(Date.UTC(2024, 9, 4), Date.UTC(2024, 9, 4, 1)),
  bin: { codes: Int32Array.of(1, 0), values: ['B1', 'B2'] },
  temp_c: Float64Array.of(10.5, Number.NaN),
  rh: Float64Array.of(0.6, 0.61),
  static_pressure_pa: Float64Array.of(Number.NaN, Number.NaN),
  flags: Uint8Array.of(0, 3),
  file: { codes: Int32Array.of(0, 0), values: ['logs/p.csv'] },
});

describe('Arrow tables', () => {
  it('come back from an IPC file as they were, null for NaN', () => {
    const table = fromIpc(toIpcFile(toArrow('plenum', columns())));
    expect([...numbers(table, 'time')]).toEqual([Date.UTC(2024, 9, 4), Date.UTC(2024, 9, 4, 1)]);
    expect(texts(table, 'bin')).toEqual(['B2', 'B1']);
    expect([...numbers(table, 'temp_c')]).toEqual([10.5, Number.NaN]);
    expect(table.getChild('temp_c')?.get(1)).toBeNull();
    expect(table.getChild('static_pressure_pa')?.nullCount).toBe(2);
    expect([...integers(table, 'flags')]).toEqual([0, 3]);
  });

  it('carry units and give the same bytes for the same input', () => {
    const table = toArrow('plenum', columns());
    expect(table.schema.fields.find((field) => field.name === 'static_pressure_pa')?.metadata.get('unit')).toBe('Pa');
    expect(Buffer.compare(toIpcFile(table), toIpcFile(toArrow('plenum', columns())))).toBe(0);
  });

  it('refuse a lacking column', () => {
    const { rh, ...rest } = columns();
    expect(rh).toHaveLength(2);
    expect(() => toArrow('plenum', rest)).toThrow(/column rh has no rows, not 2/);
  });
});
