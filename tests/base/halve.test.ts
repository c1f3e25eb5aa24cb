import { expect, it } from 'vitest';
import { halve } from '../../src/base/halve.ts';

it('halving finds the root of two, of something that falls too, and as near as it is told', () => {
  expect(halve(0, 2, (x) => x * x < 2)).toBeCloseTo(Math.SQRT2, 14);
  expect(halve(0, 2, (x) => 1 / x > Math.SQRT1_2)).toBeCloseTo(Math.SQRT2, 14);
  // After three halvings of [0, 2] the stretch is a quarter wide: 1.25 to 1.5, whose middle is told.
  expect(halve(0, 2, (x) => x * x < 2, 3)).toBe(1.375);
});
