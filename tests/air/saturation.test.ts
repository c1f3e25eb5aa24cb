import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { saturationPressureOverIcePa, saturationPressurePa } from '../../src/air/saturation.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

// ASHRAE Handbook-Fundamentals 2017 ch.1 Table 3, as quoted in psychrolib's tests (psychrometrics/psychrolib tests/test_psychrolib_si.py).
// That table and eq. 5/6 differ by up to 0.016 % (newer steam tables); the tolerance is psychrolib's own, 0.03 %.
const TABLE_3: [tempC: number, pa: number][] = [
  [5, 872.6],
  [25, 3169.7],
  [50, 12351.3],
  [100, 101418.0],
];

describe('saturation pressure', () => {
  it.each(TABLE_3)('at %d degC is %d Pa in the handbook', (tempC, pa) => {
    expect(Math.abs(saturationPressurePa(tempC) / pa - 1)).toBeLessThan(3e-4);
  });
  it('over ice at -5 degC is 401.74 Pa in the same table', () => {
    expect(Math.abs(saturationPressureOverIcePa(-5) / 401.74 - 1)).toBeLessThan(3e-4);
  });
  it('agrees with psychrolib above freezing (water) and below (ice)', () => {
    for (const t of [0.5, 10, 33, 60, 120])
      expect(saturationPressurePa(t) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 10);
    for (const t of [-60, -20, -1])
      expect(saturationPressureOverIcePa(t) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 10);
  });
  it('over supercooled water follows the formula of WMO-No. 8 (2018) annex 4.B: 6.112 exp(17.62 t / (243.12 + t)) hPa', () => {
    // The formula's own stated use is -45 to 60 degC; its fit leaves a few tenths of a percent at the cold end.
    for (const t of [-40, -30, -20, -10, -2]) {
      const wmoPa = 611.2 * Math.exp((17.62 * t) / (243.12 + t));
      expect(Math.abs(saturationPressurePa(t) / wmoPa - 1)).toBeLessThan(0.006);
      expect(saturationPressurePa(t)).toBeGreaterThan(saturationPressureOverIcePa(t));
    }
  });
  it('refuses what lies outside, NaN too', () => {
    expect(() => saturationPressurePa(Number.NaN)).toThrow(RangeError);
    expect(() => saturationPressurePa(-81)).toThrow(/between -80 and 200/);
    expect(() => saturationPressureOverIcePa(1)).toThrow(RangeError);
  });
});
