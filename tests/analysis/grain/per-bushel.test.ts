import { expect, it } from 'vitest';
import { anyBushels, perBushel } from '../../../src/analysis/grain/per-bushel.ts';
import { estimate } from '../../../src/base/estimate.ts';

it('joins the bushels’ own error to the interval, more bushels making less each', () => {
  // By hand: 1000 over 500 is 2. 480 bushels would make 2.08333, 525 would make 1.90476; of the amount 0.1 either way.
  // Down: sqrt(0.1^2 + 0.09524^2) = 0.13810; up: sqrt(0.1^2 + 0.08333^2) = 0.13017.
  const of = perBushel(estimate(1000, 950, 1050), estimate(500, 480, 525));
  expect(of.value).toBe(2);
  expect(of.interval?.[0]).toBeCloseTo(2 - 0.1381, 4);
  expect(of.interval?.[1]).toBeCloseTo(2 + 0.13017, 4);
  // Nothing costs nothing, however many bushels there are.
  expect(perBushel(estimate(0, 0, 0), estimate(500, 480, 525)).interval).toEqual([0, 0]);
  // A plain number of bushels is exact.
  expect(perBushel(estimate(1000, 950, 1050), 500).interval).toEqual([1.9, 2.1]);
});

it('asks whether there are bushels at all', () => {
  expect([null, 0, Number.NaN, 10, estimate(10, 9, 11)].map(anyBushels)).toEqual([false, false, false, true, true]);
});
