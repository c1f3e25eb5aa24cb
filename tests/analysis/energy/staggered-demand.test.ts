import { describe, expect, it } from 'vitest';
import { staggeredDemand } from '../../../src/analysis/energy/staggered-demand.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import type { DemandRule, Tariff } from '../../../src/money/tariff.ts';
import type { Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';

const start = Date.UTC(2024, 9, 10, 5); // 10 October 2024, local midnight
const tariff = (...demand: DemandRule[]): Tariff => ({
  id: 'T',
  energy: [{ pricePerKwh: 0.1, when: null }],
  demand,
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
});
const fans: Fan[] = ['F1', 'F2'].map((id) => ({ ...FAN, id, tariffId: 'T' }));
const seasonOf = (of: Tariff, on = fans) => ({ ...SEASON, fans: on, tariffs: [of] }) as unknown as Season;
const rows = (fan: string, watt: readonly number[]): Row[] =>
  watt.map((power, h) => ({ time: start + h * H, fan, power }));
/** 24 days: both fans noon to midnight on the first, F1 alone for three hours on the last; then rest until 20 November. */
const noon = (power: number) => [...Array(12).fill(0), ...Array(12).fill(power)];
const rest = (hours: number) => Array(hours).fill(0);
const table = fanTable([
  ...rows('F1', [...noon(12_000), ...rest(41 * 24)]),
  ...rows('F2', [...noon(8000), ...rest(41 * 24)]),
]);
const waysOf = (season: Season) =>
  staggeredDemand(
    season,
    season.fans.map((fan) => fanSeason(fan, table)),
  );

describe('demand as run, with starts apart and in turns, by hand', () => {
  it('12 and 8 kW from noon to midnight at 10 a kW: 200; starts apart 200 still; in turns 12 kW, 120: 80 saved', () => {
    const [october] = waysOf(seasonOf(tariff({ pricePerKw: 10, when: null, ratchet: null })));
    expect(october.month).toBe('2024-10');
    expect(october.asRun.cost.value).toBeCloseTo(200, 6);
    expect(october.startsApart.cost.value).toBeCloseTo(200, 6);
    expect(october.inTurns.cost.value).toBeCloseTo(120, 6);
    expect(october.leastCost.value).toBeCloseTo(120, 6);
    expect(october.saving.value).toBeCloseTo(80, 6);
    // Powers to 1 % each, the peak to 2 %: 1.645 x hypot(1.2, 0.8, 4) of 200.
    const half = 1.6448536 * Math.hypot(1.2, 0.8, 4);
    expect(october.asRun.cost.interval?.[1]).toBeCloseTo(200 + half, 3);
    // The saving: F1 costs 120 either way, F2 80 or nothing: 1.645 x hypot(0, 0.8, 1.6) of 80.
    expect(october.saving.interval?.[0]).toBeCloseTo(80 - 1.6448536 * Math.hypot(0.8, 1.6), 3);
  });
  it('the ratchet of each way is its own: at 50 % November owes 10, in turns 6 kW', () => {
    const [, november] = waysOf(seasonOf(tariff({ pricePerKw: 10, when: null, ratchet: 0.5 })));
    expect([november.asRun.billedKw, november.inTurns.billedKw]).toEqual([10, 6]);
    expect([november.asRun.peakKw, november.inTurns.peakKw]).toEqual([0, 0]);
    expect(november.leastCost.value).toBeCloseTo(60, 6);
  });
  it('by day alone it counts 07:00 to 22:00: both fans fit 9 h of their 12 h into the night, and 3 h one after the other', () => {
    const when = { months: null, days: null, hours: [[7 * 60, 22 * 60]] as const };
    const [october] = waysOf(seasonOf(tariff({ pricePerKw: 10, when, ratchet: null })));
    expect([october.asRun.peakKw, october.inTurns.peakKw]).toEqual([20, 12]);
  });
  it('in a month in which one fan ran alone, turns save nothing, however its power and its hours lay', () => {
    // October: both, noon to midnight. November: F1 alone, 6 h at 10 kW and 6 at 13 about noon, which by its day's mean would be
    // 11.5, and by night nothing under a charge of the day.
    const swinging = Array.from({ length: 12 }, (_, h) => (h < 6 ? 10_000 : 13_000));
    const days = 25 * 24;
    const season = (when: DemandRule['when']) => seasonOf(tariff({ pricePerKw: 10, when, ratchet: null }));
    const logs = fanTable([
      ...rows('F1', [...noon(12_000), ...rest(days), ...rest(6), ...swinging, ...rest(10 * 24)]),
      ...rows('F2', [...noon(8000), ...rest(days + 18 + 10 * 24)]),
    ]);
    for (const when of [null, { months: null, days: null, hours: [[7 * 60, 22 * 60]] as const }]) {
      const of = season(when);
      const told = staggeredDemand(
        of,
        of.fans.map((fan) => fanSeason(fan, logs)),
      );
      const [october, november] = told;
      expect(october.saving.value).toBeGreaterThan(50);
      expect(november.asRun.peakKw).toBe(13);
      expect(november.inTurns.peakKw).toBe(13);
      expect(november.saving).toEqual({ value: 0, interval: [0, 0], why: null });
    }
  });
  it('one fan has nobody to take turns with; without a demand charge there is nothing to lower', () => {
    expect(waysOf(seasonOf(tariff({ pricePerKw: 10, when: null, ratchet: null }), [fans[0]]))).toEqual([]);
    expect(waysOf(seasonOf(tariff()))).toEqual([]);
  });
});
