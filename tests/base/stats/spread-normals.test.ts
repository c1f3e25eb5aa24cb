import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { spreadNormals } from '../../../src/base/stats/spread-normals.ts';

describe('spreadNormals', () => {
  it('takes for each number the middles of equal shares, once each', () => {
    const points = spreadNormals(11, 5);
    // By the library's own quantiles, and by symmetry.
    const middles = Array.from({ length: 11 }, (_, i) => jstat.normal.inv((i + 0.5) / 11, 0, 1));
    expect(middles[5]).toBeCloseTo(0, 12);
    for (let k = 0; k < 5; k++) {
      const own = points.map((point) => point[k]);
      expect([...own].sort((a, b) => a - b)).toEqual(middles);
    }
  });

  it('gives each number an order of its own, the same each time', () => {
    const points = spreadNormals(11, 5);
    const orders = new Set(points[0].map((_, k) => points.map((point) => point[k]).join(' ')));
    expect(orders.size).toBe(5);
    expect(spreadNormals(11, 5)).toEqual(points);
  });

  it('leaves numbers hardly correlated where there are many points', () => {
    const points = spreadNormals(400, 2);
    const together = points.reduce((sum, [a, b]) => sum + a * b, 0) / 400;
    // Standard error of a correlation of none: 1 over the root of 400.
    expect(Math.abs(together)).toBeLessThan(3 / Math.sqrt(400));
  });
});
