import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enthalpyJKg } from '../../src/air/enthalpy.ts';
import { humidityRatio, relativeHumidityOfRatio } from '../../src/air/humidity-ratio.ts';
import { mixAir } from '../../src/air/mix-air.ts';
import { relativeHumidityWarmed, warmingK } from '../../src/air/warm-air.ts';

const SEEDED = { seed: 20240922, numRuns: 300 };
const temps = fc.double({ min: -30, max: 45, noNaN: true });
const rhs = fc.double({ min: 0.05, max: 1, noNaN: true });
const flows = fc.double({ min: 0.01, max: 50, noNaN: true });

describe('mixing and warming', () => {
  it('mixing keeps water and enthalpy and lies between the streams', () => {
    fc.assert(
      fc.property(temps, rhs, flows, temps, rhs, flows, (t1, r1, m1, t2, r2, m2) => {
        const a = { tempC: t1, humidityRatio: humidityRatio(t1, r1, 98000) };
        const b = { tempC: t2, humidityRatio: humidityRatio(t2, r2, 98000) };
        const mix = mixAir(a, m1, b, m2);
        const total = (of: (x: typeof a) => number) => m1 * of(a) + m2 * of(b);
        const water = total((x) => x.humidityRatio);
        expect(Math.abs((m1 + m2) * mix.humidityRatio - water)).toBeLessThan(1e-12 * (1 + water));
        const heat = total((x) => enthalpyJKg(x.tempC, x.humidityRatio));
        expect(Math.abs((m1 + m2) * enthalpyJKg(mix.tempC, mix.humidityRatio) - heat)).toBeLessThan(1e-4);
        expect(mix.tempC).toBeGreaterThanOrEqual(Math.min(t1, t2) - 1e-9);
        expect(mix.tempC).toBeLessThanOrEqual(Math.max(t1, t2) + 1e-9);
      }),
      SEEDED,
    );
  });
  it('warming keeps the humidity ratio, so humidity falls as vapour and pressure stay', () => {
    fc.assert(
      fc.property(temps, rhs, fc.double({ min: 0.1, max: 20, noNaN: true }), (t, rh, by) => {
        const after = relativeHumidityWarmed(t, rh, by);
        expect(after).toBeLessThan(rh);
        expect(after).toBeCloseTo(relativeHumidityOfRatio(t + by, humidityRatio(t, rh, 98000), 98000), 10);
      }),
      SEEDED,
    );
  });
  // Common practice: 5 degF of warming takes about 10 points off the relative humidity; 8 to 13 is "about".
  it.each([
    [40, 0.7],
    [50, 0.7],
    [60, 0.7],
  ])('5 degF of warming takes about 10 points off air of %d degF (common practice)', (f, rh) => {
    const off = 100 * (rh - relativeHumidityWarmed((f - 32) / 1.8, rh, 5 / 1.8));
    expect(off).toBeGreaterThan(8);
    expect(off).toBeLessThan(13);
  });
  it('heat goes into enthalpy at constant humidity ratio', () => {
    const k = warmingK(10_000, 5, 0.006);
    expect(enthalpyJKg(12 + k, 0.006) - enthalpyJKg(12, 0.006)).toBeCloseTo(2000, 6);
  });
  it('refuses streams below zero, none at all, and no numbers', () => {
    const air = { tempC: 10, humidityRatio: 0.005 };
    expect(() => mixAir(air, -1, air, 1)).toThrow(/oneKgS is -1/);
    expect(() => mixAir(air, 0, air, 0)).toThrow(RangeError);
    expect(() => warmingK(100, 0, 0.005)).toThrow(/dryAirKgS is 0/);
    expect(() => relativeHumidityWarmed(10, Number.NaN, 3)).toThrow(RangeError);
  });
});
