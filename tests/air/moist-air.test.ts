import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPointOfRatioC } from '../../src/air/dew-point.ts';
import { enthalpyJKg, tempOfEnthalpyC } from '../../src/air/enthalpy.ts';
import { dewPointC } from '../../src/air/humidity.ts';
import { humidityRatio, relativeHumidityOfRatio, vapourPressurePa } from '../../src/air/humidity-ratio.ts';
import { saturationPressureOverIcePa, saturationPressurePa } from '../../src/air/saturation.ts';
import { airDensityKgM3, specificVolumeM3Kg } from '../../src/air/volume.ts';
import { wetBulbC } from '../../src/air/wet-bulb.ts';
import { psychrolibSi } from '../support/psychrolib-si.ts';

const SEEDED = { seed: 20240921, numRuns: 400 };
const temps = fc.double({ min: -30, max: 50, noNaN: true });
const warm = fc.double({ min: 0.1, max: 50, noNaN: true });
const rhs = fc.double({ min: 0.05, max: 1, noNaN: true });
const pressures = fc.double({ min: 70000, max: 105000, noNaN: true });
const within = (got: number, reference: number, relative: number, least = 0) =>
  expect(Math.abs(got - reference)).toBeLessThanOrEqual(Math.max(relative * Math.abs(reference), least));

describe('moist air against psychrolib (ASHRAE Fundamentals 2017, ch. 1)', () => {
  it('humidity ratio, humidity, volume, density, enthalpy of warm air within 0.1 %', () => {
    fc.assert(
      fc.property(warm, rhs, pressures, (t, rh, p) => {
        const w = humidityRatio(t, rh, p);
        within(w, psychrolibSi('GetHumRatioFromRelHum', t, rh, p), 1e-3);
        within(relativeHumidityOfRatio(t, w, p), psychrolibSi('GetRelHumFromHumRatio', t, w, p), 1e-3);
      }),
      SEEDED,
    );
  });
  it('volume, density, enthalpy and vapour pressure of a humidity ratio within 0.1 %, frost too', () => {
    fc.assert(
      fc.property(temps, rhs, pressures, (t, rh, p) => {
        const w = humidityRatio(t, rh, p);
        within(specificVolumeM3Kg(t, w, p), psychrolibSi('GetMoistAirVolume', t, w, p), 1e-3);
        within(airDensityKgM3(t, w, p), psychrolibSi('GetMoistAirDensity', t, w, p), 1e-3);
        within(vapourPressurePa(w, p), psychrolibSi('GetVapPresFromHumRatio', w, p), 1e-3);
        // Enthalpy goes through zero near -5 degC: 0.1 % of what 1 K is worth there.
        within(enthalpyJKg(t, w), psychrolibSi('GetMoistAirEnthalpy', t, w), 1e-3, 1);
        expect(tempOfEnthalpyC(enthalpyJKg(t, w), w)).toBeCloseTo(t, 9);
      }),
      SEEDED,
    );
  });
  it('humidity ratio over ice in frost within 0.1 %, where ice is asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: -0.01, noNaN: true }), rhs, pressures, (t, rh, p) => {
        within(
          humidityRatio(t, rh, p, saturationPressureOverIcePa),
          psychrolibSi('GetHumRatioFromRelHum', t, rh, p),
          1e-3,
        );
        // Over water air holds more than over ice: an explicit choice, up to a third at -30 degC.
        expect(humidityRatio(t, rh, p)).toBeGreaterThan(humidityRatio(t, rh, p, saturationPressureOverIcePa));
      }),
      SEEDED,
    );
  });
  // psychrolib ends its own search at 0.001 degC (0.0012 left for its rounding).
  it('wet bulb and dew point above frost within 0.0012 degC', () => {
    fc.assert(
      fc.property(warm, rhs, pressures, (t, rh, p) => {
        const w = humidityRatio(t, rh, p);
        const wet = wetBulbC(t, w, p);
        const dew = dewPointOfRatioC(w, p);
        // Its water and ice branches do not meet at 0 degC, so its search may end on the other one below 1.
        if (wet > 1) within(wet, psychrolibSi('GetTWetBulbFromHumRatio', t, w, p), 0, 0.0012);
        if (dew > 0.01) within(dew, psychrolibSi('GetTDewPointFromHumRatio', t, w, p), 0, 0.0012);
      }),
      SEEDED,
    );
  });
  it('ice bulb in frost within 0.0012 degC, where ice is asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -25, max: -0.5, noNaN: true }),
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        (t, rh) => {
          const w = humidityRatio(t, rh, 98000, saturationPressureOverIcePa);
          within(wetBulbC(t, w, 98000, 'ice'), psychrolibSi('GetTWetBulbFromHumRatio', t, w, 98000), 0, 0.0012);
        },
      ),
      SEEDED,
    );
  });
});

describe('moist air', () => {
  it('round trips between humidity, ratio and dew point, frost too', () => {
    fc.assert(
      fc.property(temps, rhs, pressures, (t, rh, p) => {
        const w = humidityRatio(t, rh, p);
        expect(relativeHumidityOfRatio(t, w, p)).toBeCloseTo(rh, 10);
        expect(dewPointOfRatioC(w, p)).toBeCloseTo(dewPointC(t, rh), 6);
      }),
      SEEDED,
    );
  });
  it('keeps dew point <= wet bulb <= temperature, frost too', () => {
    fc.assert(
      fc.property(temps, rhs, pressures, (t, rh, p) => {
        const w = humidityRatio(t, rh, p);
        const wet = wetBulbC(t, w, p);
        expect(wet).toBeLessThanOrEqual(t + 1e-9);
        expect(dewPointOfRatioC(w, p)).toBeLessThanOrEqual(wet + 1e-6);
      }),
      SEEDED,
    );
  });
  it('refuses what is no number or out of range, and tells the range', () => {
    expect(() => humidityRatio(20, 60, 101325)).toThrow(/rh is 60; it must lie between 0 and 1.1/);
    expect(() => humidityRatio(20, Number.NaN, 101325)).toThrow(RangeError);
    expect(() => humidityRatio(20, 0.6, 1013)).toThrow(/pressurePa is 1013; it must lie between 30000 and 120000/);
    expect(() => humidityRatio(100, 1.05, 101325)).toThrow(/vapourPressurePa/);
    expect(() => wetBulbC(20, 0.02, 101325)).toThrow(/humidityRatio is 0.02/);
    expect(() => dewPointOfRatioC(0, 101325)).toThrow(/vapourPressurePa is 0/);
    expect(() => saturationPressurePa(Number.NaN)).toThrow(RangeError);
  });
});
