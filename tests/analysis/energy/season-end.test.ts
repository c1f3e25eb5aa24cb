import { describe, expect, it } from 'vitest';
import { binFan } from '../../../src/analysis/energy/bin-fan.ts';
import { tariffMonths } from '../../../src/analysis/energy/tariff-months.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { stillHoursAt } from '../../../src/analysis/fan/spans.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import type { Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';

// 15 hp at 1 kW/hp is 15 kW: October's peak bills 15 x 10 = 150, each later month in the data half of it, 75.
const TARIFF: Tariff = {
  id: 'T',
  energy: [{ pricePerKwh: 0.1, when: null }],
  demand: [{ pricePerKw: 10, when: null, ratchet: 0.5 }],
  fixedPerMonth: 20,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};
const fan = { ...FAN, tariffId: 'T' };
const bin = { id: 'B1', fanIds: ['F1'], grain: { filledMs: null, unloadedMs: null, depthSteps: [] } };
const season = { ...SEASON, tariffs: [TARIFF], fans: [fan], bins: [bin] } as unknown as Season;
const local = (month: number, day: number, hour = 0) => Date.UTC(2024, month - 1, day, hour + 5); // CDT
/** Two runs of 60 h and one of 30: 150 h. */
const switchings: Row[] = [
  { time: local(10, 10), on: 1 },
  { time: local(10, 12, 12), on: 0 },
  { time: local(10, 16), on: 1 },
  { time: local(10, 18, 12), on: 0 },
  { time: local(10, 25, 18), on: 1 },
  { time: local(10, 27), on: 0 },
];
function bill(rows: readonly Row[], endMs?: number) {
  const fans = [fanSeason(fan, fanTable(rows), endMs)];
  return {
    fan: fans[0],
    bin: binFan(season.bins[0], season, fans, null),
    months: tariffMonths(season, fans).map((month) => [month.month, month.demand[0].cost, month.fixed]),
  };
}

describe('a log of switchings whose last row says off', () => {
  it('bills the ratchet in the months that follow, as far as the season’s data go', () => {
    const got = bill(switchings, local(12, 10));
    expect(got.months).toEqual([
      ['2024-10', 150, 20],
      ['2024-11', 75, 20],
      ['2024-12', 75, 20],
    ]);
    expect(got.bin.demandCost.value).toBeCloseTo(300, 9);
    expect(got.bin.hours.value).toBe(150);
    expect(got.bin.unknownHours).toBe(0);
    // 27 October to 10 December: 44 days of rest are known, for the still air of the moisture too.
    expect(got.fan.how).toContain('44 days later');
    expect(stillHoursAt(got.fan.spans, Float64Array.of(local(11, 6)))[0]).toBe(240);
  });
  it('and no further: data that end on the last of October bill October alone', () => {
    expect(bill(switchings, local(10, 31)).months).toEqual([['2024-10', 150, 20]]);
    expect(bill(switchings).months).toEqual([['2024-10', 150, 20]]);
    expect(bill(switchings, local(10, 20)).months).toEqual([['2024-10', 150, 20]]);
  });
  it('two runs, four rows days apart, are switchings too: no logger samples a fan every two days', () => {
    const got = bill(switchings.slice(0, 4), local(11, 10));
    expect(got.bin.hours.value).toBe(120);
    expect(got.bin.unknownHours).toBe(0);
    expect(got.months.map((month) => month[1])).toEqual([150, 75]);
  });
});

describe('a log of switchings that says at its end once more how the fan stands', () => {
  it('knows as much as one that does not: the long rest before that row is no gap', () => {
    const got = bill([...switchings, { time: local(12, 9), on: 0 }], local(12, 10));
    expect(got.bin.hours.value).toBe(150);
    expect(got.bin.unknownHours).toBe(0);
    expect(got.months.map((month) => month[1])).toEqual([150, 75, 75]);
    expect(stillHoursAt(got.fan.spans, Float64Array.of(local(11, 6)))[0]).toBe(240);
  });
  it('a fan that still ran at that row has run until then, 24 h more; after it nothing is known', () => {
    const on = [...switchings, { time: local(11, 2), on: 1 }, { time: local(11, 3), on: 1 }];
    const got = bill(on, local(11, 4));
    expect(got.bin.hours.value).toBe(174);
    expect(got.bin.unknownHours).toBe(24);
  });
});

describe('a log whose last row does not say that the fan rests', () => {
  it('after "on" the rest of the data is not known: 4 days, 96 h, at the upper end of the hours', () => {
    const got = bill(switchings.slice(0, 5), local(10, 29, 18));
    expect(got.bin.hours.value).toBe(120);
    expect(got.bin.unknownHours).toBe(96);
    expect((got.bin.hours.interval?.[1] ?? 0) - 120).toBeGreaterThan(96);
    expect(got.fan.how).toContain('not known');
  });
  it('a sampled log ends where it ends', () => {
    const rows: Row[] = Array.from({ length: 200 }, (_, i) => ({ time: local(10, 10) + i * H, on: i < 100 ? 1 : 0 }));
    expect(bill(rows, local(12, 10)).months).toEqual([['2024-10', 150, 20]]);
  });
});
