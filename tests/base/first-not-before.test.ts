import { describe, expect, it } from 'vitest';
import { firstNotBefore } from '../../src/base/first-not-before.ts';

describe('the first of rising values that is not below a bound', () => {
  // By hand.
  it.each([
    [[], 5, 0],
    [[1, 3, 5], 0, 0],
    [[1, 3, 5], 3, 1],
    [[1, 3, 5], 3.5, 2],
    [[1, 3, 5], 6, 3],
  ])('of %j for %f is at %i', (values, bound, index) => {
    expect(firstNotBefore(values, bound)).toBe(index);
  });
  it('is the first of several alike', () => {
    expect(firstNotBefore(Float64Array.of(1, 2, 2, 2, 3), 2)).toBe(1);
  });
  it('is what a walk from the front finds', () => {
    const values = Array.from({ length: 57 }, (_, i) => Math.floor(i / 3) * 0.7);
    for (let bound = -1; bound < 15; bound += 0.35) {
      const walked = values.findIndex((value) => value >= bound);
      expect(firstNotBefore(values, bound)).toBe(walked < 0 ? values.length : walked);
    }
  });
});
