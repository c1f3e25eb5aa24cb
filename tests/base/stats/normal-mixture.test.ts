import { describe, expect, it } from 'vitest';
import { mixtureBelow, mixtureQuantile } from '../../../src/base/stats/normal-mixture.ts';

describe('a mixture of normal distributions', () => {
  it('of one is that one: 5 % below -1.6449 standard errors (tables)', () => {
    expect(mixtureBelow(1, [{ at: 3, weight: 2 }], 2)).toBeCloseTo(0.1587, 4);
    expect(mixtureQuantile(0.05, [{ at: 3, weight: 1 }], 2)).toBeCloseTo(3 - 2 * 1.6449, 3);
  });
  it('of two far apart has their shares: a quarter and three quarters', () => {
    const two = [
      { at: 0, weight: 1 },
      { at: 100, weight: 3 },
    ];
    expect(mixtureBelow(50, two, 1)).toBeCloseTo(0.25, 9);
    // the lowest 5 % are a fifth of the first: -0.8416 (tables)
    expect(mixtureQuantile(0.05, two, 1)).toBeCloseTo(-0.8416, 4);
    expect(mixtureQuantile(0.95, two, 1)).toBeCloseTo(100 + 1.5011, 3);
  });
});
