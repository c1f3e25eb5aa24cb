import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import { placedHours } from '../../../src/analysis/energy/placed-hours.ts';
import { staggeredDemand } from '../../../src/analysis/energy/staggered-demand.ts';
import { tariffMonths } from '../../../src/analysis/energy/tariff-months.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { withoutMoments } from '../../../src/analysis/fan/untimed-stretches.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import { fanTable, H } from '../fan/known-fan.ts';
import { billTable } from './bill-table.ts';
import { bin, FAN_T, review, seasonOf, start } from './by-hand-season.ts';

const KWH = 3.6e6;
// 0.30 from 17 to 21 h, 0.10 else.
const dayAndEvening: Tariff = {
  id: 'T',
  energy: [
    { pricePerKwh: 0.3, when: { months: null, days: null, hours: [[17 * 60, 21 * 60]] } },
    { pricePerKwh: 0.1, when: null },
  ],
  demand: [],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};
/** A motor that gives its 15 hp draws this, at the efficiency stated. */
const KW = (15 * 0.7456999) / 0.9;
const fan = { ...FAN_T, load: 1, motorEfficiency: 0.9 };
const hours = 8;
/** A meter read at each local midnight, ten days of eight hours. */
const dial = (perDay: number) => Array.from({ length: 11 }, (_, day) => ({ time: start + day * 24 * H, day, perDay }));
const energyRows = dial(hours * KW).map(({ time, day, perDay }) => ({ time, energy: day * perDay * KWH }));
const runRows = dial(hours).map(({ time, day, perDay }) => ({ time, run: day * perDay * 3600 }));
const season = seasonOf([fan], [bin('B1', ['F1'])], [dayAndEvening]);

describe('hours of which a meter tells how many, but not when', () => {
  // Ten days of 8 h: all outside the evening 80 h x 12.43 kW x 0.10; four of each day's eight within it: x (0.10 + 0.30) / 2.
  const cheapest = 10 * hours * KW * 0.1;
  const dearest = 10 * hours * KW * 0.2;
  const evenly = 10 * hours * KW * ((4 * 0.3 + 20 * 0.1) / 24);

  it.each([
    ['an energy meter', energyRows],
    ['a run-time meter', runRows],
  ])('%s read once a day: the cost may be that of the cheapest hours, or of the dearest', (_, rows) => {
    const got = review(rows, season);
    // Hours are spread over clock hours of which each is on for its first third: within a percent of evenly.
    expect(got.energyCost.value! / evenly).toBeCloseTo(1, 2);
    for (const told of [got.energyCost, got.cost, { interval: totalOf(got.months) }]) {
      expect(told.interval![0]).toBeLessThanOrEqual(cheapest);
      expect(told.interval![1]).toBeGreaterThanOrEqual(dearest);
    }
    const months = tariffMonths(season, [fanSeason(fan, fanTable(rows))]);
    const low = months.reduce((sum, { told }) => sum + told!.total.interval![0], 0);
    const high = months.reduce((sum, { told }) => sum + told!.total.interval![1], 0);
    expect(low).toBeLessThanOrEqual(cheapest);
    expect(high).toBeGreaterThanOrEqual(dearest);
  });
  it('and so a bill’s part of the fans', () => {
    const bills = billTable([{ from: start, to: start + 240 * H, kwh: 2000 }]);
    const [bill] = billShares(season, bills, [fanSeason(fan, fanTable(energyRows))]);
    expect(bill.fansMoney.interval![0]).toBeLessThanOrEqual(cheapest);
    expect(bill.fansMoney.interval![1]).toBeGreaterThanOrEqual(dearest);
  });
  it('and no more than that: with the energy known to half a percent the ends lie within a percent of these two', () => {
    const { interval } = review(energyRows, season).energyCost;
    expect(Math.abs(interval![0] / cheapest - 1)).toBeLessThan(0.02);
    expect(Math.abs(interval![1] / dearest - 1)).toBeLessThan(0.02);
  });
  it('at one price all day there is nothing to doubt', () => {
    const flat = { ...dayAndEvening, energy: [{ pricePerKwh: 0.1, when: null }] };
    const { value, interval } = review(energyRows, seasonOf([fan], [bin('B1', ['F1'])], [flat])).energyCost;
    // A meter is good to 0.5 % (1.645 standard errors: 0.8 %).
    expect(interval![1] - interval![0]).toBeLessThan(0.02 * value!);
  });
});

describe('demand of hours of which a meter tells how many, but not when', () => {
  const demand = (hours: [number, number] | null): Tariff => ({
    ...dayAndEvening,
    demand: [
      { pricePerKw: 10, when: hours === null ? null : { months: null, days: null, hours: [hours] }, ratchet: null },
    ],
  });
  const of = (tariff: Tariff) => review(runRows, seasonOf([fan], [bin('B1', ['F1'])], [tariff]));

  it('under a rule that leaves nine hours of the day free, eight hours may have been run within these: nothing at least', () => {
    const { demandCost, cost, energyCost } = of(demand([7 * 60, 22 * 60]));
    expect(demandCost.value).toBeCloseTo(10 * KW, 6);
    expect(demandCost.interval![0]).toBe(0);
    expect(cost.interval![0]).toBeLessThanOrEqual(energyCost.interval![0] + 1e-9);
    const [month] = tariffMonths(seasonOf([fan], [bin('B1', ['F1'])], [demand([7 * 60, 22 * 60])]), [
      fanSeason(fan, fanTable(runRows)),
    ]);
    expect(month.told!.demandCost.interval![0]).toBe(0);
  });
  it('under one that leaves seven free, or none, the fan was in it', () => {
    // A nameplate is good to 12 %, 1.645 standard errors of it 20 %.
    for (const rule of [[6 * 60, 23 * 60] as [number, number], null]) {
      expect(of(demand(rule)).demandCost.interval![0]).toBeGreaterThan(0.75 * 10 * KW);
    }
  });
});

describe('a day that the fan ran through beside one of eight hours', () => {
  // The run of the whole day joins with the first slice of the next: it must not count beside that day's hours.
  const rows = [0, 24, 32, 40, 64, 72].map((ran, day) => ({ time: start + day * 24 * H, run: ran * 3600 }));
  const always: Tariff = { ...dayAndEvening, demand: [{ pricePerKw: 10, when: null, ratchet: null }] };
  const byDay: Tariff = {
    ...dayAndEvening,
    demand: [{ pricePerKw: 10, when: { months: null, days: null, hours: [[0, 15 * 60]] }, ratchet: null }],
  };

  it.each([
    ['always', always],
    ['by day', byDay],
  ])('a rule that holds %s sees one fan’s power, not twice that', (_, tariff) => {
    const [month] = tariffMonths(seasonOf([fan], [bin('B1', ['F1'])], [tariff]), [fanSeason(fan, fanTable(rows))]);
    expect(month.demand[0].peakKw).toBeCloseTo(KW, 6);
    const { energyKwh } = review(rows, seasonOf([fan], [bin('B1', ['F1'])], [tariff]));
    expect(energyKwh.value).toBeCloseTo(72 * KW, 6);
  });
  it('and the least that a rule saw of such a fan is no more than that either', () => {
    const told = fanSeason(fan, fanTable(rows));
    for (const where of ['outside', 'inside'] as const) {
      const { startMs, endMs } = placedHours(told, byDay.demand[0], zoneOf('America/Chicago'), where);
      const pieces = [...startMs.keys()].sort((a, b) => startMs[a] - startMs[b]);
      expect(pieces.every((k, i) => i === 0 || startMs[k] >= endMs[pieces[i - 1]])).toBe(true);
      expect(pieces.reduce((sum, k) => sum + endMs[k] - startMs[k], 0) / H).toBeCloseTo(72, 9);
    }
    const timed = withoutMoments(told.spans, told.spread ?? []);
    const hours = [...timed.startMs.keys()].reduce(
      (sum, k) => sum + (timed.powerW[k] > 0 ? timed.endMs[k] - timed.startMs[k] : 0),
      0,
    );
    expect(hours / H).toBeCloseTo(48, 9);
  });
});

describe('demand of two fans whose meters are read once a day', () => {
  const two = [fan, { ...fan, id: 'F2' }];
  const both = (perDay: number) =>
    two.flatMap(({ id }) => dial(perDay).map(({ time, day }) => ({ time, fan: id, run: day * perDay * 3600 })));
  const always: Tariff = { ...dayAndEvening, demand: [{ pricePerKw: 10, when: null, ratchet: null }] };
  const fansOf = (rows: ReturnType<typeof both>) => two.map((one) => fanSeason(one, fanTable(rows)));
  const seasonOfTwo = seasonOf(two, [bin('B1', ['F1']), bin('B2', ['F2'])], [always]);

  it('holds both: that they ran at once, and that they ran in turns', () => {
    const [month] = tariffMonths(seasonOfTwo, fansOf(both(8)));
    const [low, high] = month.told!.demandCost.interval!;
    expect(low).toBeLessThanOrEqual(10 * KW);
    expect(high).toBeGreaterThanOrEqual(20 * KW);
    // And no less than one fan's alone, a nameplate good to 20 %.
    expect(low).toBeGreaterThan(0.75 * 10 * KW);
  });
  it('a fan of two hours a day has the power of its motor in them, not that of a spread over the day', () => {
    const [month] = tariffMonths(seasonOf([fan], [bin('B1', ['F1'])], [always]), [fanSeason(fan, fanTable(both(2)))]);
    expect(month.demand[0].peakKw).toBeCloseTo(KW, 6);
  });
  it('leaves the clock hours of a bin that both serve open, from those of one to those of both', () => {
    // Ten days of eight hours and of six: 80 h where the second ran within the first's, 140 h where it ran after it.
    const rows = [...both(8).filter((row) => row.fan === 'F1'), ...both(6).filter((row) => row.fan === 'F2')];
    const { hours } = review(rows, seasonOf(two, [bin('B1', ['F1', 'F2'])], [always]));
    expect(hours.interval![0]).toBeLessThanOrEqual(80);
    expect(hours.interval![1]).toBeGreaterThanOrEqual(140);
    // A run-time meter is good to a thousandth: no more than that is open beside.
    expect(hours.interval![1] - hours.interval![0]).toBeLessThan(61);
    // Twenty hours each fit into no day one after the other.
    const full = review(both(20), seasonOf(two, [bin('B1', ['F1', 'F2'])], [always])).hours;
    expect(full.interval![0]).toBeLessThanOrEqual(200);
    expect(full.interval![1]).toBeGreaterThanOrEqual(240);
    expect(full.interval![1]).toBeLessThan(241);
  });
  it('holds too that one ran while another, whose log tells when, did', () => {
    // F1 from 18 to 21 h of each day by an hourly log, F2 two hours of each day by its meter.
    const hourly = Array.from({ length: 240 }, (_, h) => ({
      time: start + h * H,
      fan: 'F1',
      power: h % 24 >= 18 && h % 24 < 21 ? KW * 1000 : 0,
    }));
    const rows = [...hourly, ...both(2).filter((row) => row.fan === 'F2')];
    const [month] = tariffMonths(seasonOfTwo, fansOf(rows as ReturnType<typeof both>));
    expect(month.told!.demandCost.interval![1]).toBeGreaterThanOrEqual(20 * KW);
    expect(month.told!.demandCost.interval![0]).toBeLessThanOrEqual(10 * KW * 1.01);
  });
  it('has no moment: nobody knows which quarter hour it was', () => {
    const [month] = tariffMonths(seasonOfTwo, fansOf(both(8)));
    expect(month.demand[0].peakKw).toBeGreaterThan(0);
    expect(month.demand[0].atMs).toBeNull();
  });
  it('other ways to run them are withheld, with that reason; as run the interval holds any placing', () => {
    const [way] = staggeredDemand(seasonOfTwo, fansOf(both(8)));
    expect(way.asRun.cost.interval![0]).toBeLessThanOrEqual(10 * KW);
    expect(way.asRun.cost.interval![1]).toBeGreaterThanOrEqual(20 * KW);
    for (const told of [way.startsApart.cost, way.inTurns.cost, way.inTurns.peak, way.leastCost, way.saving]) {
      expect(told).toMatchObject({ value: null, why: expect.stringMatching(/tells how many hours .*, not when/) });
    }
  });
  it('and so in the months that a ratchet carries such a peak to, and in no other', () => {
    // The meters' ten days lie in October; in November both are read each hour, four hours at once on the first.
    const later = (id: string) =>
      Array.from({ length: 24 * 20 }, (_, h) => ({
        time: start + (240 + h) * H,
        fan: id,
        run: (10 * 8 + Math.max(0, Math.min(4, h - 12 * 24))) * 3600,
      })).slice(1);
    const rows = two.flatMap(({ id }) => [...both(8).filter((row) => row.fan === id), ...later(id)]);
    const saved = (ratchet: number | null) => {
      const tariff = { ...always, demand: [{ pricePerKw: 10, when: null, ratchet }] };
      return staggeredDemand(
        seasonOf(two, [...seasonOfTwo.bins], [tariff]),
        two.map((one) => fanSeason(one, fanTable(rows))),
      ).map(({ month, saving }) => [month, saving.value === null]);
    };
    expect(saved(0.6)).toEqual([
      ['2024-10', true],
      ['2024-11', true],
    ]);
    expect(saved(null)).toEqual([
      ['2024-10', true],
      ['2024-11', false],
    ]);
  });
});

const totalOf = (months: ReturnType<typeof review>['months']): [number, number] => [
  months.reduce((sum, { told }) => sum + told!.energyCost.interval![0], 0),
  months.reduce((sum, { told }) => sum + told!.energyCost.interval![1], 0),
];
