import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../scripts/sample/random.ts';
import { theilSen } from '../../../src/base/stats/theil-sen.ts';

describe('Theil-Sen line', () => {
  it('by hand: five points, one of them far off', () => {
    // Slopes of the ten pairs, sorted: -1, 0, 2/3, 1, 1.5, 2, 4.5, 16/3, 7.5, 16; their middle is (1.5 + 2) / 2 = 1.75.
    // Values less 1.75 x: 0.25, 0.5, -0.25, -3, 11.25; their middle is 0.25. Neighbouring residuals do not hang together.
    // Kendall's variance for five points is 5 * 4 * 15 / 18 = 16.67; 1.645 * 4.08 = 6.7; ranks (10 -+ 6.7) / 2: the first and the last slope.
    const line = theilSen([1, 2, 3, 4, 5], [2, 4, 5, 4, 20], 0.5);
    expect(line?.slope).toBeCloseTo(1.75, 12);
    expect(line?.intercept).toBeCloseTo(0.25, 12);
    expect(line?.neighbourCorrelation).toBe(0);
    expect([line?.low, line?.high]).toEqual([-1, 16]);
  });

  it('is not turned by a quarter of points that are anything', () => {
    const x = Array.from({ length: 40 }, (_, i) => i);
    const y = x.map((one) => 3 - 0.5 * one + (one % 4 === 1 ? 50 : 0));
    expect(theilSen(x, y, 1)?.slope).toBeCloseTo(-0.5, 9);
  });

  it('pairs nearer than the least distance say nothing; too few points make no line', () => {
    expect(theilSen([0, 1, 2, 3], [0, 1, 2, 3], 1)).toBeNull();
    expect(theilSen([0, 0.1, 0.2, 0.3, 0.4, 0.5], [0, 9, 1, 8, 2, 7], 1)).toBeNull();
  });

  // A seasonal log's neighbouring days hang together: the interval has to hold its 90 % there too. Bounds: 300 draws leave 1.7 % of standard error.
  it.each([0, 0.4, 0.7])('its 90 %% interval holds the true slope where neighbours correlate by %f', (rho) => {
    const random = randomStream(20241101, `theil-sen ${rho}`);
    let inside = 0;
    const draws = 300;
    for (let draw = 0; draw < draws; draw++) {
      let error = random.normal();
      const x: number[] = [];
      const y: number[] = [];
      for (let i = 0; i < 40; i++) {
        error = rho * error + Math.sqrt(1 - rho * rho) * random.normal();
        x.push(10 * i);
        y.push(0.004 * 10 * i + 0.1 * error);
      }
      const line = theilSen(x, y, 5);
      if (line === null || (line.low <= 0.004 && line.high >= 0.004)) inside += 1;
    }
    expect(inside / draws).toBeGreaterThan(0.84);
    expect(inside / draws).toBeLessThan(0.99);
  });
});
