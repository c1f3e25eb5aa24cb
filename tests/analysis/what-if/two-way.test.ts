import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoWay } from '../../../src/analysis/what-if/two-way.ts';

describe('a full table in parts', () => {
  it('is mean, rows, columns and rest, by hand', () => {
    // [[1, 5], [7, 7]]: mean 5, rows -2 and 2, columns -1 and 1, rests -1, 1, 1, -1.
    // Squares about the mean 16 + 0 + 4 + 4 = 24 = rows 2 x 8 + columns 2 x 2 + rests 4.
    const { mean, rows, columns, share } = twoWay([1, 5, 7, 7], 2);
    expect(mean).toBe(5);
    expect(rows).toEqual([-2, 2]);
    expect(columns).toEqual([-1, 1]);
    expect(share.rows).toBeCloseTo(16 / 24, 12);
    expect(share.columns).toBeCloseTo(4 / 24, 12);
    expect(share.rest).toBeCloseTo(4 / 24, 12);
  });

  it('finds what an additive table was made of, and no rest', () => {
    const numbers = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(numbers, numbers, (rows, columns) => {
        const cells = rows.flatMap((row) => columns.map((column) => row + column));
        const found = twoWay(cells, columns.length);
        expect(found.share.rest).toBeLessThan(1e-6);
        expect(found.rows[1] - found.rows[0]).toBeCloseTo(rows[1] - rows[0], 9);
        expect(found.columns[1] - found.columns[0]).toBeCloseTo(columns[1] - columns[0], 9);
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('refuses a table with a hole', () => {
    expect(() => twoWay([1, 2, Number.NaN, 4], 2)).toThrow(RangeError);
    expect(() => twoWay([1, 2, 3], 2)).toThrow(RangeError);
  });
});
