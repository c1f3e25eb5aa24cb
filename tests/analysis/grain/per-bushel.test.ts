import { expect, it } from 'vitest';
import { perBushel } from '../../../src/analysis/grain/per-bushel.ts';
import { estimate } from '../../../src/base/estimate.ts';

it('joins the bushels’ own error to the interval', () => {
  // By hand: 1000 over 500 is 2; own half-width 1.645 x 0.025 x 2 = 0.0822; of the amount 0.1; together sqrt(0.0822^2 + 0.1^2) = 0.1295.
  const of = perBushel(estimate(1000, 950, 1050), 500);
  expect(of.value).toBe(2);
  expect(of.interval?.[0]).toBeCloseTo(2 - 0.1295, 4);
  expect(of.interval?.[1]).toBeCloseTo(2 + 0.1295, 4);
  // Nothing costs nothing, however many bushels there are.
  expect(perBushel(estimate(0, 0, 0), 500).interval).toEqual([0, 0]);
});
