import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressurePa, stationPressurePa } from '../../src/air/pressure.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

describe('pressure', () => {
  it('of the standard atmosphere meets ASHRAE Fundamentals 2017 ch.1 Table 1 (as quoted in psychrolib tests) to the printed digit', () => {
    expect(Math.abs(standardPressurePa(1000) - 89875)).toBeLessThan(1);
    expect(Math.abs(standardPressurePa(4000) - 61640)).toBeLessThan(1);
    expect(standardPressurePa(0)).toBe(101325);
  });
  it('at the station meets psychrolib to its lapse rate: 0.02 %', () => {
    // psychrolib: Hess (1959) ch. 6.5, lapse 0.0065 K/m halved over the column, gas constant 287.055, g 9.807.
    for (const [z, t] of [
      [201, -20],
      [320, 15],
      [1500, 25],
    ]) {
      expect(Math.abs(stationPressurePa(102000, z, t) / psychrolib.GetStationPressure(102000, z, t) - 1)).toBeLessThan(
        2e-4,
      );
    }
  });
  it('without a temperature takes the standard ratio', () => {
    expect(stationPressurePa(101325, 1000, Number.NaN)).toBeCloseTo(standardPressurePa(1000), 8);
    expect(Math.abs(stationPressurePa(101325, 500, -30) / stationPressurePa(101325, 500, Number.NaN) - 1)).toBeLessThan(
      0.013,
    );
  });
  it('at the station gives sea level’s back as psychrolib reckons it, and falls with height', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 95000, max: 106000, noNaN: true }),
        fc.double({ min: 1, max: 2500, noNaN: true }),
        fc.double({ min: -30, max: 40, noNaN: true }),
        (sea, z, t) => {
          const station = stationPressurePa(sea, z, t);
          // Constants of the two differ by 5e-5 (gas constant, gravity), which the column multiplies by at most 0.35.
          expect(Math.abs(psychrolib.GetSeaLevelPressure(station, z, t) / sea - 1)).toBeLessThan(3e-4);
          expect(stationPressurePa(sea, z + 10, t)).toBeLessThan(station);
          expect(Math.abs(standardPressurePa(z) / psychrolib.GetStandardAtmPressure(z) - 1)).toBeLessThan(1e-9);
        },
      ),
      { seed: 20241005, numRuns: 200 },
    );
  });
  it('refuses pressures, heights and temperatures that no weather has, and tells the range', () => {
    expect(() => stationPressurePa(1013, 300, 10)).toThrow(/seaLevelPa is 1013; it must lie between 85000 and 110000/);
    expect(() => stationPressurePa(Number.NaN, 300, 10)).toThrow(/seaLevelPa is NaN/);
    expect(() => stationPressurePa(101325, Number.NaN, 10)).toThrow(/elevationM is NaN/);
    expect(() => stationPressurePa(101325, 300, 283)).toThrow(/tempC is 283/);
    expect(() => standardPressurePa(Number.NaN)).toThrow(/elevationM is NaN; it must lie between -5000 and 11000/);
  });
});
