import { describe, expect, it } from 'vitest';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { daytimeHours } from '../../../src/simulation/strategies/daytime-hours.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { BLOWER, inventedBin, inventedHours } from './invented-bin.ts';

const night = (hour: number) => hour % 24 >= 22 || hour % 24 < 6;

// All worked by hand: the fan takes 10 kW, the heater 0.5 kW and 3 an hour of fuel.
describe('what a run costs', () => {
  it('prices each hour of energy by its own rate', () => {
    const hours = inventedHours({ count: 48, price: (hour) => (night(hour) ? 0.08 : 0.12) });
    // Two days of 24 h: 8 h at night and 16 h by day. 2 x (80 x 0.08 + 160 x 0.12) = 51.20
    const { outcome } = runSeason(inventedBin(hours), alwaysOn);
    expect(outcome.fanHours).toBe(48);
    expect(outcome.energyKwh).toBeCloseTo(480, 9);
    expect(outcome.energyCost).toBeCloseTo(51.2, 9);
    expect(outcome.cost).toBeCloseTo(51.2, 9);
    // From 20:30 to 23:00: half an hour and an hour at 0.12, an hour at 0.08. 2 x (15 x 0.12 + 10 x 0.08) = 5.20
    const evening = runSeason(inventedBin(hours), daytimeHours, { from: 20.5, to: 23 }).outcome;
    expect(evening.fanHours).toBeCloseTo(5, 9);
    expect(evening.energyCost).toBeCloseTo(5.2, 9);
  });

  it('bills each month its peak in the demand rule’s time, and the ratchet’s part of the highest month before', () => {
    const count = 96;
    // A day each of September to December; the charge holds from 7 to 22 h.
    const localMonth = Uint8Array.from({ length: count }, (_, hour) => 9 + Math.floor(hour / 24));
    const holds = Uint8Array.from({ length: count }, (_, hour) => (hour % 24 >= 7 && hour % 24 < 22 ? 1 : 0));
    const hours = inventedHours({ count }, { localMonth, demand: [{ pricePerKw: 9.5, ratchet: 0.6, holds }] });
    const share = new Float64Array(count);
    const heat = new Float64Array(count);
    share[10] = 1; // September by day: 10 kW
    share[24 + 2] = 1; // October at night only: 60 % of 10 kW
    share[48 + 12] = 0.25; // November by day, a quarter of an hour with the heater: 10.5 kW
    heat[48 + 12] = 1;
    // December rests: 60 % of 10.5 kW = 6.3 kW
    const { outcome } = runSeason(inventedBin(hours), scheduled('as-logged', 'As logged', share, heat));
    expect(outcome.demandCost).toBeCloseTo(9.5 * (10 + 6 + 10.5 + 6.3), 9);
    expect(outcome.fanHours).toBeCloseTo(2.25, 12);
    expect(outcome.energyKwh).toBeCloseTo(10 + 10 + 0.25 * 10.5, 9);
    expect(outcome.heatCost).toBeCloseTo(0.25 * 3, 12);
    expect(outcome.cost).toBeCloseTo(9.5 * 32.8 + 22.625 * 0.1 + 0.75, 9);
  });

  it('knows no cost where an hour without a price was used, and only there', () => {
    const hours = inventedHours({ count: 48, price: (hour) => (hour < 24 ? 0.1 : Number.NaN) });
    const first = Float64Array.from({ length: 48 }, (_, hour) => (hour < 24 ? 1 : 0));
    expect(runSeason(inventedBin(hours), scheduled('as-logged', 'As logged', first)).outcome.cost).toBeCloseTo(24, 9);
    const { outcome } = runSeason(inventedBin(hours), alwaysOn);
    expect(outcome.cost).toBeNaN();
    expect(outcome.energyKwh).toBeCloseTo(480, 9);
  });

  it('takes power from the level that is reached', () => {
    const bin = inventedBin(inventedHours({ count: 48 }));
    const [full] = bin.levels;
    const half = { ...full, depthM: 2, blower: { ...BLOWER, powerW: 6000 } };
    const { outcome } = runSeason({ ...bin, levels: [half, { ...full, hour: 30 }] }, alwaysOn);
    // 30 h of 6 kW and 18 h of 10 kW.
    expect(outcome.energyKwh).toBeCloseTo(360, 9);
  });
});
