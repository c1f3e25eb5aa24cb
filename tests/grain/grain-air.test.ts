import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { relativeHumidityOfRatio } from '../../src/air/humidity-ratio.ts';
import { equilibriumMoistureWb } from '../../src/grain/equilibrium.ts';
import { grainHumidityRatio, grainRatioPerK, grainRatioPerMoisture } from '../../src/grain/grain-air.ts';
import { ISOTHERM_CROPS, isothermOf, isothermsOf } from '../../src/grain/isotherm.ts';
import { isothermHumidity, isothermHumidityPerMoisture } from '../../src/grain/isotherm-equations.ts';
import { psychrolibSi } from '../support/psychrolib-si.ts';

const SEEDED = { seed: 20241002, numRuns: 300 };
const iso = fc.constantFrom(...ISOTHERM_CROPS.flatMap((crop) => isothermsOf(crop)));
const temps = fc.double({ min: -10, max: 40, noNaN: true });
const moistures = fc.double({ min: 0.08, max: 0.24, noNaN: true });

describe('air in balance with grain', () => {
  it('gives the grain’s moisture back by its humidity', () => {
    fc.assert(
      fc.property(iso, temps, moistures, (one, t, m) => {
        const rh = relativeHumidityOfRatio(t, grainHumidityRatio(one, t, m, 98000), 98000);
        fc.pre(rh > 0.1 && rh < 0.95);
        expect(equilibriumMoistureWb(one, t, rh)).toBeCloseTo(m, 9);
      }),
      SEEDED,
    );
  });
  it('rises with temperature and moisture, and is psychrolib’s ratio at the grain’s humidity above frost', () => {
    const corn = isothermOf('corn');
    fc.assert(
      fc.property(fc.double({ min: 1, max: 40, noNaN: true }), moistures, (t, m) => {
        const here = grainHumidityRatio(corn, t, m, 101325);
        expect(grainHumidityRatio(corn, t + 0.5, m, 101325)).toBeGreaterThan(here);
        expect(grainHumidityRatio(corn, t, m + 0.002, 101325)).toBeGreaterThan(here);
        const { equation, a, b, c } = corn;
        const rh = isothermHumidity(equation, a, b, c, t, m / (1 - m));
        expect(Math.abs(here / psychrolibSi('GetHumRatioFromRelHum', t, rh, 101325) - 1)).toBeLessThan(1e-3);
      }),
      SEEDED,
    );
  });
  it('knows how humidity rises with moisture: the slope taken by a small step', () => {
    fc.assert(
      fc.property(iso, temps, moistures, ({ equation, a, b, c }, t, m) => {
        const at = (db: number) => isothermHumidity(equation, a, b, c, t, db);
        const db = m / (1 - m);
        const slope = (at(db + 1e-6) - at(db - 1e-6)) / 2e-6;
        const off = isothermHumidityPerMoisture(equation, a, b, c, t, db) - slope;
        expect(Math.abs(off)).toBeLessThan(1e-5 * Math.abs(slope) + 1e-6);
      }),
      SEEDED,
    );
  });
  it('knows how its humidity ratio rises with temperature and moisture: slopes taken by small steps', () => {
    fc.assert(
      fc.property(iso, temps, moistures, (one, t, m) => {
        const db = m / (1 - m);
        const at = (tempC: number, dry: number) => grainHumidityRatio(one, tempC, dry / (1 + dry), 98000);
        const perK = (at(t + 1e-3, db) - at(t - 1e-3, db)) / 2e-3;
        expect(Math.abs(grainRatioPerK(one, t, db, 98000) / perK - 1)).toBeLessThan(1e-5);
        const perMoisture = (at(t, db + 1e-6) - at(t, db - 1e-6)) / 2e-6;
        const off = grainRatioPerMoisture(one, t, db, 98000) - perMoisture;
        expect(Math.abs(off)).toBeLessThan(1e-5 * Math.abs(perMoisture) + 1e-8);
      }),
      SEEDED,
    );
  });
  it('refuses no numbers and pressures that are none', () => {
    expect(() => grainHumidityRatio(isothermOf('corn'), 10, Number.NaN, 98000)).toThrow(/moistureWb is NaN/);
    expect(() => grainHumidityRatio(isothermOf('corn'), 10, 0.15, 980)).toThrow(/pressurePa is 980/);
  });
});
