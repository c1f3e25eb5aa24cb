import { createRequire } from 'node:module';
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
});
