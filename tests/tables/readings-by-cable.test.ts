import { expect, it } from 'vitest';
import { toArrow } from '../../src/tables/arrow.ts';
import { readingsByCable } from '../../src/tables/readings-by-cable.ts';

it('counts readings, missing cells and flags by bin and cable', () => {
  const text = (codes: number[], values: string[]) => ({ codes: Int32Array.from(codes), values });
  const table = toArrow('readings', {
    time: Float64Array.of(0, 0, 0, 3_600_000),
    bin: text([0, 0, 0, 0], ['B1']),
    cable: text([1, 0, 0, 0], ['C1', 'C2']),
    sensor: Int16Array.of(1, 1, 2, 1),
    height_m: Float64Array.of(1, 1, 2, 1),
    temp_c: Float64Array.of(10, 11, Number.NaN, 12),
    moisture_wb: Float64Array.of(0.15, 0.15, 0.16, Number.NaN),
    temp_flags: Uint8Array.of(0, 1, 2, 0),
    moisture_flags: Uint8Array.of(0, 4, 0, 4),
    file: text([0, 0, 0, 0], ['a.csv']),
  });
  // Counted by hand: C1 has rows 2 to 4; flags on missing cells do not count.
  expect(readingsByCable(table)).toEqual([
    { bin: 'B1', cable: 'C1', sensors: 2, readings: 3, temperatures: 2, moistures: 2, flagged: 2 },
    { bin: 'B1', cable: 'C2', sensors: 1, readings: 1, temperatures: 1, moistures: 1, flagged: 0 },
  ]);
});
