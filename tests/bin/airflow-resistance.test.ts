import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/base/sources/sources.ts';
import { airflowResistancePaM, bedPressurePa, resistancePaM } from '../../src/bin/airflow-resistance.ts';
import { RESISTANCE_CURVES, resistanceCurveOf } from '../../src/bin/resistance-curves.ts';
import { DAMP_GRAIN_FACTOR, finesFactor, PACKING_FACTOR } from '../../src/bin/resistance-factors.ts';
import { cfmPerBushel, velocityOfCfmPerBushel } from '../../src/bin/specific-airflow.ts';
import { velocityOfPressureMS } from '../../src/bin/velocity-of-pressure.ts';
import { CROPS } from '../../src/grain/crops.ts';
import { readReference } from '../reference/read-reference.ts';

const SEEDED = { seed: 20240923, numRuns: 400 };
const curves = fc.constantFrom(...RESISTANCE_CURVES);
// Short of the ends, where the last bit of rounding may step out of the range.
const shares = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

describe('airflow resistance', () => {
  it('rises with airflow, faster than in proportion', () => {
    fc.assert(
      fc.property(curves, shares, shares, (curve, x, y) => {
        fc.pre(Math.abs(x - y) > 1e-6);
        const [low, high] = curve.rangeMS;
        const q1 = low + Math.min(x, y) * (high - low);
        const q2 = low + Math.max(x, y) * (high - low);
        expect(airflowResistancePaM(curve, q2) / airflowResistancePaM(curve, q1)).toBeGreaterThan(q2 / q1);
      }),
      SEEDED,
    );
  });
  it('gives the airflow of a static pressure back', () => {
    fc.assert(
      fc.property(
        curves,
        shares,
        fc.double({ min: 1, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (curve, x, depthM, factor) => {
          const [low, high] = curve.rangeMS;
          const q = low + x * (high - low);
          const pressure = bedPressurePa(curve, q, depthM, factor);
          expect(Math.abs(velocityOfPressureMS(curve, pressure, depthM, factor) / q - 1)).toBeLessThan(1e-9);
        },
      ),
      SEEDED,
    );
  });
  it('is nothing at rest and falls to it in proportion', () => {
    expect(resistancePaM(20700, 30.4, 0)).toBe(0);
    // ln(1 + x) -> x, so pressure -> a q / b: exact arithmetic for the limit.
    expect(resistancePaM(20700, 30.4, 1e-9) / ((20700 * 1e-9) / 30.4)).toBeCloseTo(1, 6);
  });
  it('refuses airflows and pressures that were not measured, and tells the range', () => {
    const corn = resistanceCurveOf('corn');
    expect(() => airflowResistancePaM(corn, 0.001)).toThrow(
      /velocityMS is 0.001; it must lie between 0.0056 and 0.304/,
    );
    expect(() => airflowResistancePaM(corn, Number.NaN)).toThrow(RangeError);
    expect(() => bedPressurePa(corn, 0.05, Number.NaN, 1.5)).toThrow(/depthM is NaN/);
    expect(() => velocityOfPressureMS(corn, 5e5, 6, 1.5)).toThrow(/pressurePa is 500000; it must lie between/);
    expect(() => velocityOfPressureMS(corn, -10, 6, 1.5)).toThrow(RangeError);
  });
  it('has multipliers: packing 1.5, damp grain 0.8, fines by their share and the airflow', () => {
    expect([PACKING_FACTOR, DAMP_GRAIN_FACTOR]).toEqual([1.5, 0.8]); // read in the notes of D272
    expect(finesFactor(0, 0.1)).toBe(1);
    expect(finesFactor(0.05, 0.1)).toBeCloseTo(1 + (14.5566 - 2.6418) * 0.05, 12); // by hand; equation from memory
    expect(finesFactor(0.1, 0.2)).toBeLessThan(finesFactor(0.1, 0.08));
    expect(() => finesFactor(0.3, 0.1)).toThrow(/finesFraction is 0.3; it must lie between 0 and 0.2/);
    expect(() => finesFactor(0.1, 0.05)).toThrow(/velocityMS/);
  });
});

describe('the resistance table', () => {
  it('holds the constants of the reference file (memory), each with a source of the bibliography', () => {
    const rows = readReference('airflow_constants');
    expect(RESISTANCE_CURVES).toHaveLength(rows.length);
    const keys = new Set(SOURCES.map((source) => source.key));
    RESISTANCE_CURVES.forEach((curve, i) => {
      const range = rows[i].valid_Q_m3_per_s_m2.split('-').map(Number);
      expect([curve.a, curve.b, ...curve.rangeMS]).toEqual([Number(rows[i].a), Number(rows[i].b), ...range]);
      expect(keys).toContain(curve.sourceKey);
    });
  });
  it('serves every crop of the crop table', () => {
    for (const { id } of CROPS) expect(resistanceCurveOf(id).set).toBe('standard');
  });
  it('lists what there is when asked for what there is not', () => {
    expect(() => resistanceCurveOf('soybean', 'low airflow')).toThrow(
      'no low airflow resistance constants for "soybean"; there are corn, wheat',
    );
    expect(() => resistanceCurveOf('rye')).toThrow(/there are corn, soybean, wheat, sorghum/);
  });
});

describe('airflow for each bushel', () => {
  it('is 1 cfm/bu where a bushel of volume gets a cubic foot a minute', () => {
    expect(cfmPerBushel(1000 * (0.3048 ** 3 / 60), 1000 * 1.2445 * 0.3048 ** 3)).toBeCloseTo(1, 12);
  });
  it('is 13.39 L/s for a cubic metre of grain (unit tables, from memory; Ontario rounds it to 13)', () => {
    expect(cfmPerBushel(0.01339, 1)).toBeCloseTo(1, 3.3);
    expect(Math.round(1000 / cfmPerBushel(1, 1))).toBe(13);
  });
  it('goes with the velocity: area cancels', () => {
    const velocity = velocityOfCfmPerBushel(0.8, 6);
    expect(cfmPerBushel(velocity * 90, 90 * 6)).toBeCloseTo(0.8, 12);
  });
  it('refuses no numbers and no grain', () => {
    expect(() => cfmPerBushel(Number.NaN, 100)).toThrow(/flowM3S is NaN/);
    expect(() => cfmPerBushel(1, 0)).toThrow(/grainVolumeM3 is 0/);
  });
});
