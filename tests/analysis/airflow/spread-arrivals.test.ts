import { describe, expect, it } from 'vitest';
import { ARRIVAL_PARTS, spreadArrivals } from '../../../src/analysis/airflow/spread-arrivals.ts';

describe('arrivals of a spread change', () => {
  it.each([0.02, 0.1, 0.5])('have mean 1 and nearly the variance asked for: %f', (spread) => {
    const parts = spreadArrivals(spread);
    expect(parts.length).toBe(ARRIVAL_PARTS);
    const mean = parts.reduce((sum, one) => sum + one, 0) / ARRIVAL_PARTS;
    const variance = parts.reduce((sum, one) => sum + (one - mean) ** 2, 0) / ARRIVAL_PARTS;
    expect(mean).toBeCloseTo(1, 9);
    // The means of eight equal parts lack what lies within the parts: a twelfth or so of a bell, more of a long tail; tables are by 5 %.
    expect(variance / spread).toBeGreaterThan(0.75);
    expect(variance / spread).toBeLessThan(1.03);
  });

  it('come mostly before their mean, as first passages do', () => {
    // Inverse Gaussian of mean 1 and shape 10 (variance 0.1): P(T < 1) = F(0) + e^20 F(-2 sqrt 10) by its closed form = 0.5624 (normal
    // tail of 6.3246: 1.27e-10, times e^20 = 4.85e8: 0.0615), so 4 of 8 parts lie below 1 wholly and the fifth has its middle there.
    const parts = spreadArrivals(0.1);
    expect(parts[3]).toBeLessThan(1);
    expect(parts[5]).toBeGreaterThan(1);
    expect([...parts]).toEqual([...parts].sort((a, b) => a - b));
  });
});
