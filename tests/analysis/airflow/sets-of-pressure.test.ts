import { describe, expect, it } from 'vitest';
import { setsOfPressure } from '../../../src/analysis/airflow/sets-of-pressure.ts';
import { airflowOfPressure } from '../../../src/bin/airflow-of-pressure.ts';

describe('sets of constants that a pressure with errors may be told by', () => {
  it('near the end of what a set was measured at may be told by its neighbour too, by how likely the air is within', () => {
    // Corn's standard set was measured from 0.0056 m/s on. By hand (D272.3, eq. 1): at 0.005 m/s it makes 20700 x 2.5e-5 / ln 1.152 =
    // 3.657 Pa/m, 30.18 Pa in 5.5 m with packing 1.5; ln(0.0056 / 0.005) = 0.1133, over 0.25 the normal share above 0.453 is 0.325.
    const near = setsOfPressure('corn', 30.18, 5.5, 1.5, 1, 0.25);
    expect(near.map(({ set }) => set)).toEqual(['standard', 'low airflow']);
    expect(Math.exp(near[0].lnFlow)).toBeCloseTo(0.005, 5);
    expect(near[0].within).toBeCloseTo(0.325, 2);
    // ln(0.0056 / 0.00312) by the set for low airflow: nearly sure to be one of its own
    expect(near[1].within).toBeGreaterThan(0.99);
    // the surer the pressure, the less the neighbour counts; far off, and for crops with one set, it is as without errors
    expect(setsOfPressure('corn', 30.18, 5.5, 1.5, 1, 0.05).map(({ set }) => set)).toEqual(['low airflow']);
    expect(setsOfPressure('corn', 400, 5.5, 1.5, 1, 0.25).map(({ set }) => set)).toEqual(['standard']);
    const canola = setsOfPressure('canola', 150, 5, 1.3, 60, 0.25);
    expect(canola).toHaveLength(1);
    expect(Math.exp(canola[0].lnFlow)).toBeCloseTo(airflowOfPressure('canola', 150, 5, 1.3, 60)[0].flowM3S, 9);
    expect(() => setsOfPressure('corn', 30, 5, 1.5, 1, 0)).toThrow(/relSd is 0/);
  });
});
