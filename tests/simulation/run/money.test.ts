import { describe, expect, it } from 'vitest';
import {
  METER,
  meterCost,
  meterHour,
  monthsLeft,
  newMeter,
  owedLater,
} from '../../../src/simulation/run/money-meter.ts';
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

  it('tells at every hour what the peaks so far will still cost by their ratchet', () => {
    const count = 96;
    const localMonth = Uint8Array.from({ length: count }, (_, hour) => [9, 10, 11, 1][Math.floor(hour / 24)]);
    const holds = new Uint8Array(count).fill(1);
    const hours = inventedHours({ count }, { localMonth, demand: [{ pricePerKw: 9.5, ratchet: 0.6, holds }] });
    const left = monthsLeft(hours, count);
    const meter = newMeter(hours);
    const owed: number[] = [];
    for (let hour = 0; hour < count; hour++) {
      meterHour(meter, hours, hour, hour === 10 || hour === 60 ? 1 : 0, hour === 10 ? 10 : 20, 0);
      owed.push(owedLater(meter, hours, left));
    }
    expect(owed[9]).toBe(0);
    // 10 kW in September: October, November and January owe 6 kW each.
    expect(owed[10]).toBeCloseTo(9.5 * 3 * 6, 9);
    // As October begins its part is billed, two are left.
    expect(owed[24]).toBeCloseTo(9.5 * 2 * 6, 9);
    // 20 kW in November: January owes 12 kW.
    expect(owed[60]).toBeCloseTo(9.5 * 12, 9);
    expect(owed[72]).toBe(0);
    expect(meter[METER.demandCost]).toBeCloseTo(9.5 * (10 + 6 + 20 + 12), 9);
    expect(meterCost(meter)).toBeCloseTo(meter[METER.energyCost] + 9.5 * 48, 9);
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
