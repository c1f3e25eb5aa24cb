import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commercialDrying } from '../../src/money/commercial-drying.ts';
import { highTemperatureDrying } from '../../src/money/high-temperature-drying.ts';
import { perWaterKg, waterRemovedKg } from '../../src/money/per-water.ts';

const RATES = { fuelPerBushelPoint: 0.02, fuelPrice: 1.5, kwhPerBushelPoint: 0.01, pricePerKwh: 0.1 };

describe('drying alternatives', () => {
  it('in two passes cost what one pass costs', () => {
    const points = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(points, points, (a, b) => {
        const once = highTemperatureDrying(1000, a + b, RATES);
        const first = highTemperatureDrying(1000, a, RATES);
        const second = highTemperatureDrying(1000, b, RATES);
        expect(first.cost + second.cost).toBeCloseTo(once.cost, 6);
        expect(first.fuel + second.fuel).toBeCloseTo(once.fuel, 6);
        expect(first.kwh + second.kwh).toBeCloseTo(once.kwh, 6);
        expect(once.fuelCost + once.electricityCost + once.otherCost).toBe(once.cost);
      }),
      { seed: 20240926, numRuns: 300 },
    );
  });
  it.each([Number.NaN, -1])('throws on %d', (bad) => {
    expect(() => commercialDrying(bad, 5, 0.05)).toThrow(/wetBushels/);
    expect(() => commercialDrying(1, bad, 0.05)).toThrow(/points is .* between 0 and 60/);
    expect(() => commercialDrying(1, 5, bad)).toThrow(/feePerBushelPoint/);
    expect(() => highTemperatureDrying(bad, 5, RATES)).toThrow(/wetBushels/);
    expect(() => highTemperatureDrying(1, bad, RATES)).toThrow(/points/);
    for (const key of [...Object.keys(RATES), 'otherPerBushel']) {
      expect(() => highTemperatureDrying(1, 5, { ...RATES, [key]: bad })).toThrow(new RegExp(key));
    }
  });
});

describe('per water removed', () => {
  // By hand: 100 kg at 20 % hold 80 kg of dry matter, which at 15 % weigh 80/0.85 = 94.1176 kg.
  it('100 kg from 20 to 15 % give off 5.88 kg; $1 is then 17 cents a kg', () => {
    expect(waterRemovedKg(100, 0.2, 0.15)).toBeCloseTo(100 - 80 / 0.85, 9);
    expect(perWaterKg(1, waterRemovedKg(100, 0.2, 0.15))).toBeCloseTo(0.17, 9);
  });
  it('has no number where no water left', () => {
    expect(() => perWaterKg(1, 0)).toThrow(/waterKg is 0/);
    expect(() => perWaterKg(1, Number.NaN)).toThrow(/waterKg is NaN/);
    expect(() => perWaterKg(Number.NaN, 1)).toThrow(/amount is NaN/);
    expect(() => waterRemovedKg(-1, 0.2, 0.15)).toThrow(/wetKg is -1/);
  });
});
