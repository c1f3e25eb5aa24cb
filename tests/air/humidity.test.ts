import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { dewPointC, relativeHumidity } from '../../src/air/humidity.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

describe('relative humidity and dew point', () => {
  it('agree with psychrolib above freezing', () => {
    for (const [t, td] of [
      [25, 15],
      [40, 2],
      [10, 9.5],
    ]) {
      expect(relativeHumidity(t, td)).toBeCloseTo(psychrolib.GetRelHumFromTDewPoint(t, td), 8);
      const rh = psychrolib.GetRelHumFromTDewPoint(t, td);
      // psychrolib stops its own iteration at 0.001 degC.
      expect(dewPointC(t, rh)).toBeCloseTo(td, 6);
      expect(Math.abs(dewPointC(t, rh) - psychrolib.GetTDewPointFromRelHum(t, rh))).toBeLessThan(0.0011);
    }
  });
  it('are the inverse of each other in frost too', () => {
    for (const t of [-30, -8, 0, 12])
      for (const rh of [0.2, 0.7, 1]) expect(relativeHumidity(t, dewPointC(t, rh))).toBeCloseTo(rh, 9);
  });
  it('tell a dew point above the temperature as more than 1', () => {
    expect(relativeHumidity(10, 11)).toBeGreaterThan(1);
  });
  it('tell a dew point below -80 degC as missing, and refuse no numbers', () => {
    expect(dewPointC(-40, 0.002)).toBeNaN();
    expect(dewPointC(-40, 0.02)).toBeLessThan(-60);
    expect(() => dewPointC(Number.NaN, 0.5)).toThrow(/tempC is NaN; it must lie between -60 and 150/);
    expect(() => dewPointC(10, 50)).toThrow(/rh is 50; it must lie between 0.001 and 1.1/);
    expect(() => relativeHumidity(10, Number.NaN)).toThrow(RangeError);
  });
});
