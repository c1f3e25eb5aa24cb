import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equilibriumHumidity } from '../../src/grain/equilibrium.ts';
import { heatOfVaporisationFreeJKg, heatOfVaporisationJKg } from '../../src/grain/heat-of-vaporisation.ts';
import { ISOTHERM_CROPS, isothermOf, isothermsOf } from '../../src/grain/isotherm.ts';

describe('heat of vaporisation from grain', () => {
  // Published heats for corn stand in tests/reference/grain_properties.csv.
  // Steam tables (memory): 2501 kJ/kg at 0 degC, 2406 at 40 degC.
  it.each([
    [0, 2501],
    [40, 2406],
  ])('of free water at %d degC is %d kJ/kg within 0.1 percent (memory)', (t, kJ) => {
    expect(Math.abs(heatOfVaporisationFreeJKg(t) / kJ / 1000 - 1)).toBeLessThan(0.001);
  });
  it('fits the isotherm: its slope is that of ln RH, taken by a small step', () => {
    const iso = fc.constantFrom(...ISOTHERM_CROPS.flatMap((crop) => isothermsOf(crop)));
    const temps = fc.double({ min: -10, max: 40, noNaN: true });
    const moistures = fc.double({ min: 0.08, max: 0.25, noNaN: true });
    fc.assert(
      fc.property(iso, temps, moistures, (one, t, m) => {
        const h = 0.01;
        const slope = Math.log(equilibriumHumidity(one, t + h, m) / equilibriumHumidity(one, t - h, m)) / (2 * h);
        const expected = heatOfVaporisationFreeJKg(t) + 461.5 * (t + 273.15) ** 2 * slope;
        expect(Math.abs(heatOfVaporisationJKg(one, t, m) / expected - 1)).toBeLessThan(1e-5);
      }),
      { seed: 1963, numRuns: 300 },
    );
  });
  it('lies above that of free water, and nears it as grain gets wetter', () => {
    for (const crop of ISOTHERM_CROPS) {
      const at = (m: number) => heatOfVaporisationJKg(isothermOf(crop), 20, m) / heatOfVaporisationFreeJKg(20);
      expect(at(0.08)).toBeGreaterThan(at(0.2));
      expect(at(0.2)).toBeGreaterThan(1);
      // the steepest relation in use, wheat 1 + 23 exp(-0.4 M) after Gallaher 1951 (memory): 1.71 at 8 % wet basis
      expect(at(0.08)).toBeLessThan(1.71);
    }
  });
});
