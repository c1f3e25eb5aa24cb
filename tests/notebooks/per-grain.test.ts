import { expect, it } from 'vitest';
import { estimate } from '../../src/base/estimate.ts';
import { asGrain, perGrain, tradeTable, Units } from '../../src/notebook.ts';
import { exampleInput } from '../report/example-review.ts';

const [corn] = exampleInput().review.bins;
const us = new Units('us', 'USD', 'America/Chicago');
const si = new Units('si', 'USD', 'America/Chicago');

// A bushel of corn weighs 56 lb of 0.45359237 kg: 25.40117 kg, so 39.3683 bushels a tonne.
it('a price a bushel becomes one a tonne by the crop’s legal bushel', () => {
  const cost = estimate(0.0235, 0.0203, 0.0274);
  expect(perGrain(cost, corn, us)).toEqual(cost);
  const tonne = perGrain(cost, corn, si);
  expect(tonne.value).toBeCloseTo(0.0235 * 39.3683, 5);
  expect(tonne.interval?.[0]).toBeCloseTo(0.0203 * 39.3683, 5);
  expect(si.say('money per grain point', tonne)).toBe('0.925 USD a tonne-point (0.799 to 1.08)');
});

it('bushels become tonnes', () => {
  expect(asGrain(estimate(10_000, 9000, 11_000), corn, si).value).toBeCloseTo(254.0117, 3);
});

it('the trade’s table totals only what is known of every bin', () => {
  const { bins } = exampleInput().review;
  expect(tradeTable(bins, us).total?.cost).toMatchObject({ value: null, why: 'Not known of every bin.' });
  // 480 and 816 fan hours; the upper ends 720 and 1224
  expect(tradeTable(bins.slice(0, 2), us).total?.hours).toMatchObject({ value: 1296, interval: [1296, 1944] });
  expect(tradeTable(bins.slice(0, 1), us).total).toBeUndefined();
  expect(tradeTable(bins, si).columns.map((column) => column.label)).toContain('Cost per tonne-point');
});
