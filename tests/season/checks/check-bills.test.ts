import { describe, expect, it } from 'vitest';
import { checkBills } from '../../../src/season/checks/check-bills.ts';
import { billTable } from '../../analysis/energy/bill-table.ts';

const day = (month: number, date: number) => Date.UTC(2024, month - 1, date, 5);
const october = { from: day(10, 1), to: day(11, 1) };

describe('bills', () => {
  it('with energy or demand below zero are told, a negative amount (a credit) is not', () => {
    const told = checkBills(
      billTable([
        { ...october, kwh: -5, kw: 14, amount: 200, tariff: 'A' },
        { ...october, kwh: 500, kw: -1.5, amount: 200, tariff: 'B' },
        { ...october, kwh: 0, kw: 0, amount: -20, tariff: 'C' },
        { ...october, amount: -20, tariff: 'D' },
      ]),
    );
    expect(told.map((one) => [one.kind, one.where, one.cells])).toEqual([
      ['spike', 'bills of A', 0],
      ['spike', 'bills of B', 0],
    ]);
    expect(told[0].text).toContain('an energy of -5 kWh');
    expect(told[1].text).toContain('a demand of -1.5 kW');
  });

  it('of one tariff that overlap are told; those that meet, or are of two tariffs, are not', () => {
    const november = { from: day(11, 1), to: day(12, 1) };
    expect(checkBills(billTable([october, november, { ...october, tariff: 'U' }]))).toEqual([]);
    // Written in any order: 15 October to 30 November lies over October for 17 days and over November for 30.
    const told = checkBills(billTable([november, { from: day(10, 15), to: day(12, 1) }, october]));
    expect(told.map((one) => [one.kind, one.fromMs, one.toMs])).toEqual([
      ['duplicate', day(10, 15), day(11, 1)],
      ['duplicate', day(11, 1), day(12, 1)],
    ]);
    expect(told[0].text).toContain('17 days');
    expect(told[1].text).toContain('30 days');
  });

  it('none, or one, is nothing to tell', () => {
    expect(checkBills(billTable([]))).toEqual([]);
    expect(checkBills(billTable([october]))).toEqual([]);
  });
});
