import { expect, test } from 'vitest';
import { fromLocal } from '../../scripts/sample/calendar.ts';
import { addQuarter, demandMonths, energyPrice, type QuarterLoads } from '../../scripts/sample/charges.ts';
import { TARIFFS } from '../../scripts/sample/farm-prices.ts';

const tou = TARIFFS[0];

// Read off the tariff by hand: 13-19 on workdays of June to September 0.158, 22-6 0.074, else 0.109. 5 September 2024 was a Thursday, the 7th a Saturday.
test.each([
  ['2024-09-05 12:59', 0.109],
  ['2024-09-05 13:00', 0.158],
  ['2024-09-05 18:59', 0.158],
  ['2024-09-05 19:00', 0.109],
  ['2024-09-07 15:00', 0.109],
  ['2024-10-01 15:00', 0.109],
  ['2024-10-01 22:00', 0.074],
  ['2024-10-02 05:59', 0.074],
  ['2024-10-02 06:00', 0.109],
])('the hour at %s costs %f', (clock, price) => {
  expect(energyPrice(tou, fromLocal(clock))).toBe(price);
});

test('the hour that fall repeats is night both times', () => {
  const first = fromLocal('2024-11-03 01:30');
  expect(energyPrice(tou, first)).toBe(0.074);
  expect(energyPrice(tou, first + 3_600_000)).toBe(0.074);
});

/*
 * By hand: October's peak is 2.0 + 3.0 kWh in a quarter hour = 20 kW at 10:00; the 30 kW at 23:00 lie outside 7-22.
 * 20 kW x 8.75 = 175.00, shared 2 : 3 = 70 and 105. November's own peak is 4 kW, but 60 % of 20 = 12 kW are billed: 105.00, shared as October's peak was.
 */
test('a ratchet bills and shares the earlier peak', () => {
  const loads: QuarterLoads = new Map();
  addQuarter(loads, fromLocal('2024-10-08 10:00'), 'a', 1.5);
  addQuarter(loads, fromLocal('2024-10-08 10:14'), 'a', 0.5);
  addQuarter(loads, fromLocal('2024-10-08 10:05'), 'b', 3);
  addQuarter(loads, fromLocal('2024-10-08 23:00'), 'b', 7.5);
  addQuarter(loads, fromLocal('2024-11-08 10:00'), 'b', 1);
  const [october, november] = demandMonths(tou, loads, ['2024-10', '2024-11']);
  expect(october.peakKw).toBeCloseTo(20, 9);
  expect(october.cost).toBeCloseTo(175, 9);
  expect(october.byPayer.get('a')).toBeCloseTo(70, 9);
  expect(november.peakKw).toBeCloseTo(4, 9);
  expect(november.billedKw).toBeCloseTo(12, 9);
  expect(november.cost).toBeCloseTo(105, 9);
  expect(november.byPayer.get('b')).toBeCloseTo(63, 9);
});
