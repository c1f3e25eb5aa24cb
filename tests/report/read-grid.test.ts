import { describe, expect, it } from 'vitest';
import { packed, packedGrid } from '../../src/report/read-grid.ts';

describe('values that travel with a figure', () => {
  it('are whole numbers of the last decimal, runs of the same once, gaps as dashes', () => {
    expect(packed([16.31, 16.29, 16.3, Number.NaN, Number.NaN, -0.04, 2], 1)).toBe('163*3 -*2 0 20');
    expect(packed([], 1)).toBe('');
  });
  it('keep rows with their edges as shares of the height', () => {
    const grid = packedGrid({
      columns: { fromMs: 0, stepMs: 86_400_000, count: 2 },
      rows: [
        { label: 'low', low: 0, high: 1 / 3 },
        { label: 'high', low: 1 / 3, high: 1 },
      ],
      say: '$0 °F',
      none: 'no reading',
      layers: [{ values: Float64Array.from([1, 2, 3, 4]), decimals: 0 }],
    });
    expect(JSON.parse(JSON.stringify(grid))).toEqual({
      from: 0,
      step: 86_400_000,
      count: 2,
      rows: [
        ['low', 0, 0.333],
        ['high', 0.333, 1],
      ],
      say: '$0 °F',
      none: 'no reading',
      layers: [{ v: '1 2 3 4', d: 0 }],
    });
  });
});
