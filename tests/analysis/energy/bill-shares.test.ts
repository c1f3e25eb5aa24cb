import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import type { BillShare } from '../../../src/analysis/energy/bill-types.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import type { Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';
import { billTable, type Given } from './bill-table.ts';

const Z90 = 1.6448536;
const TARIFF: Tariff = {
  id: 'T',
  energy: [{ pricePerKwh: 0.1, when: null }],
  demand: [{ pricePerKw: 10, when: null, ratchet: 0.5 }],
  fixedPerMonth: 20,
  connectedPerHpYear: 12,
  minimumPerMonth: null,
};
const FAN_T: Fan = { ...FAN, tariffId: 'T' };
const day = (month: number, date: number) => Date.UTC(2024, month - 1, date, month === 11 && date > 3 ? 6 : 5);

/** hourly samples from a local midnight on: `[hours, watt]` one after another */
const powerRows = (fromMs: number, parts: readonly (readonly [number, number])[]): Row[] => {
  const rows: Row[] = [];
  let h = 0;
  for (const [hours, watt] of parts) for (let i = 0; i < hours; i++) rows.push({ time: fromMs + h++ * H, power: watt });
  rows.push({ time: fromMs + h * H, power: 0 });
  return rows;
};
const seasonOf = (fan: Fan, bins: unknown[] = []) =>
  ({ ...SEASON, fans: [fan], tariffs: [TARIFF], bins }) as unknown as Season;
function shares(rows: Row[], bills: readonly Given[], fan = FAN_T, bins: unknown[] = []): BillShare[] {
  const season = seasonOf(fan, bins);
  return billShares(season, billTable(bills), [fanSeason(fan, fanTable(rows))]);
}

describe('a bill that crosses a month, by hand', () => {
  // 10 kW from 1 October 00:00 to 20 October 00:00 and 12 kW from 10 to 12 November; the log from 1 October to 1 December.
  const rows = powerRows(day(10, 1), [
    [19 * 24, 10_000],
    [21 * 24 + 1, 0],
    [48, 12_000],
    [19 * 24, 0],
  ]);
  const [one] = shares(rows, [{ from: day(10, 15), to: day(11, 15), kwh: 2400, kw: 14, amount: 400 }]);

  it('15 October to 14 November: 5 days at 10 kW and 2 at 12 are 1,200 + 576 = 1,776 of 2,400 kWh, 74 %, rest 624', () => {
    expect(one.fansKwh.value).toBeCloseTo(1776, 6);
    expect(one.share.value).toBeCloseTo(0.74, 9);
    expect(one.restKwh.value).toBeCloseTo(624, 6);
    expect(one.untoldHours).toBe(0);
    expect(one.cause).toBeNull();
  });
  it('money: 177.60 energy, 12 kW x 10 = 120 demand of its own time, connected 15 hp x 12 / 12 x (17/31 + 14/30 months)', () => {
    // November has 721 h, for the clock goes back on the 3rd, in the bill's part of it.
    const november = (14 * 24 + 1) / 721;
    expect(one.fansMoney.value).toBeCloseTo(177.6 + 120 + 15 * (17 / 31 + november), 2);
    expect(one.fixed).toBe(20);
    expect(one.restMoney.value).toBeCloseTo(400 - 20 - (one.fansMoney.value ?? NaN), 9);
  });
  it('the interval is that of logged power, 1 % and the hours’ own, and goes through to the rest', () => {
    const half = (one.fansKwh.interval?.[1] ?? NaN) - 1776;
    expect(half).toBeGreaterThan(Z90 * 0.01 * 1776 - 1e-6);
    expect(half).toBeLessThan(Z90 * 0.013 * 1776);
    expect(one.restKwh.interval).toEqual([
      2400 - (one.fansKwh.interval?.[1] ?? NaN),
      2400 - (one.fansKwh.interval?.[0] ?? NaN),
    ]);
    expect(one.share.interval?.[0]).toBeCloseTo((one.fansKwh.interval?.[0] ?? NaN) / 2400, 12);
  });
  it('the ratchet looks back from the bill’s first day: December’s bill owes half of 12 kW', () => {
    const [later] = shares(rows, [{ from: day(11, 15), to: day(11, 30), kwh: 100, amount: 100 }]);
    // 16 of November's 30 days: 15 x 15/30.04; 6 kW x 10 = 60.
    expect(later.fansKwh.value).toBe(0);
    expect(later.fansMoney.value).toBeCloseTo(60 + (15 * 15 * 24) / 721, 6);
  });
});

describe('what a bill does not say, and what no log says', () => {
  const rows = powerRows(day(10, 1), [
    [240, 10_000],
    [240, 0],
  ]);
  it('without energy or amount the share is withheld with the reason', () => {
    const [one] = shares(rows, [{ from: day(10, 1), to: day(10, 11) }]);
    expect(one.share.why).toContain('does not say its energy');
    expect(one.restMoney.why).toContain('does not say its amount');
    expect(one.fansKwh.value).toBeCloseTo(2400, 6);
  });
  it('time before the log could have been run: the upper end takes all that the bill leaves over, and no more', () => {
    const [one] = shares(rows, [{ from: day(9, 20), to: day(10, 11), kwh: 3000 }]);
    expect(one.untoldHours).toBe(11 * 24);
    expect(one.fansKwh.interval?.[1]).toBeCloseTo(3000, 6);
    expect(one.restKwh.interval?.[0]).toBeCloseTo(0, 6);
    // 11 days at 10 kW are 2,640 kWh: of a bill of 9,000 the fans had at most 2,400 + 2,640 and the log's error.
    const [large] = shares(rows, [{ from: day(9, 20), to: day(10, 11), kwh: 9000 }]);
    expect(large.fansKwh.interval?.[1]).toBeGreaterThan(5040);
    expect(large.fansKwh.interval?.[1]).toBeLessThan(5110);
  });
  it('a fan without any log could have run at its nameplate: 15 hp are 15 kW, of a bill of 10 days at most 3,600 kWh', () => {
    const [one] = shares([], [{ from: day(10, 11), to: day(10, 21), kwh: 5000, amount: 600 }]);
    expect(one.fansKwh.value).toBe(0);
    expect(one.fansKwh.interval?.[1]).toBeCloseTo(3600, 6);
    expect(one.share.interval?.[1]).toBeCloseTo(0.72, 9);
    // 360 of energy and a peak of 15 kW x 10.
    expect((one.fansMoney.interval?.[1] ?? NaN) - (one.fansMoney.value ?? NaN)).toBeCloseTo(360 + 150, 6);
  });
  it('a bin without grain needs no fan: filled on 1 October, the fan is taken to have rested before', () => {
    const grain = { filledMs: day(10, 1), unloadedMs: null, depthSteps: [] };
    const bill = [{ from: day(9, 20), to: day(10, 11), kwh: 3000 }];
    expect(shares(rows, bill, FAN_T, [{ id: 'B1', fanIds: ['F1'], grain }])[0].untoldHours).toBe(0);
    const early = { ...grain, filledMs: day(9, 28) };
    expect(shares(rows, bill, FAN_T, [{ id: 'B1', fanIds: ['F1'], grain: early }])[0].untoldHours).toBe(72);
  });
  it('a tariff that season.yaml does not have costs nothing that can be told', () => {
    const [one] = shares(rows, [{ from: day(10, 1), to: day(10, 11), kwh: 5, amount: 5, tariff: 'X' }]);
    expect(one.fansKwh.value).toBe(0);
    expect(one.fansMoney.why).toContain('not in season.yaml');
  });
});

describe('fans that explain more than was billed: the most likely cause', () => {
  const bill = (kwh: number) => [{ from: day(10, 11), to: day(10, 21), kwh }];
  const always = powerRows(day(10, 1), [[30 * 24, 10_000]]);
  const resting = powerRows(day(10, 1), [
    [14 * 24, 0],
    [2 * 24, 10_000],
    [14 * 24, 0],
  ]);
  it.each([
    ['within the error: 2,400 of 2,390 kWh by a power sensor of 1 %', always, FAN_T, 2390, 'within the error'],
    ['one day of ten too many: the reading’s date', always, FAN_T, 2180, 'read up to 1 day off'],
    ['480 kWh in mid-bill, half of it billed: a factor of the meter', resting, FAN_T, 240, 'factor'],
    ['480 kWh in mid-bill, 350 billed: another meter', resting, FAN_T, 350, 'another meter'],
  ])('%s', (_, rows, fan, kwh, says) => {
    const [one] = shares(rows, bill(kwh), fan);
    expect(one.restKwh.value).toBeLessThan(0);
    expect(one.cause).toContain(says);
  });
  it('a fan by its nameplate, 15 kW for 10 days: 3,600 kWh of 2,700 billed is two standard errors of the nameplate', () => {
    const states: Row[] = [
      { time: day(10, 1), on: 1 },
      { time: day(10, 31), on: 0 },
    ];
    const [one] = shares(states, bill(2700));
    expect(one.fansKwh.value).toBeCloseTo(3600, 6);
    expect(one.cause).toContain('draws less than its nameplate');
  });
});

describe('a bill whose energy is below zero', () => {
  it('is left out with the reason, and what the fans used is still told', () => {
    const [one] = shares(powerRows(day(10, 1), [[24, 10_000]]), [
      { from: day(10, 1), to: day(11, 1), kwh: -5, amount: 200 },
    ]);
    const why = 'The energy of the bill is below zero, so the bill is left out.';
    for (const of of [one.share, one.restKwh, one.restMoney]) expect(of).toMatchObject({ value: null, why });
    expect(one.cause).toBeNull();
    // A day at 10 kW.
    expect(one.fansKwh.value).toBeCloseTo(240, 6);
  });
});
