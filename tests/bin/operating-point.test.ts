import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resistancePaM } from '../../src/bin/airflow-resistance.ts';
import { assertFanCurve, type FanCurve, fanFlowM3S } from '../../src/bin/fan-curve.ts';
import { airPowerW, fanWarmingByPressureK, fanWarmingK } from '../../src/bin/fan-power.ts';
import { type Bed, operatingPoint } from '../../src/bin/operating-point.ts';
import { resistanceCurveOf } from '../../src/bin/resistance-curves.ts';

const SEEDED = { seed: 20240924, numRuns: 300 };
const FAN: FanCurve = [
  [0, 8.4],
  [500, 7.1],
  [1000, 5.6],
  [1500, 2.5],
];
const bed = (depthM: number, over: Partial<Bed> = {}): Bed => ({
  curve: resistanceCurveOf('corn'),
  floorAreaM2: 94.6,
  depthM,
  factor: 1.5,
  ...over,
});
const depths = fc.double({ min: 1, max: 8, noNaN: true });
const solved = (fans: FanCurve[], of: Bed) => {
  const point = operatingPoint(fans, of);
  return point.ok ? point : expect.fail(point.why);
};

describe('operating point', () => {
  it('lies on the fan’s curve and on the bed’s', () => {
    fc.assert(
      fc.property(depths, (depthM) => {
        const point = solved([FAN], bed(depthM));
        expect(point.flowM3S).toBeCloseTo(fanFlowM3S(FAN, point.pressurePa), 9);
        expect(point.velocityMS).toBeCloseTo(point.flowM3S / 94.6, 12);
        const need = 1.5 * depthM * resistancePaM(20700, 30.4, point.velocityMS);
        expect(Math.abs(need - point.pressurePa)).toBeLessThan(1e-6);
        expect(point.inMeasuredRange).toBe(true);
      }),
      SEEDED,
    );
  });
  it('deeper grain: more pressure, less air', () => {
    fc.assert(
      fc.property(depths, depths, (x, y) => {
        fc.pre(Math.abs(x - y) > 1e-3);
        const shallow = solved([FAN], bed(Math.min(x, y)));
        const deep = solved([FAN], bed(Math.max(x, y)));
        expect(deep.pressurePa).toBeGreaterThan(shallow.pressurePa);
        expect(deep.flowM3S).toBeLessThan(shallow.flowM3S);
      }),
      SEEDED,
    );
  });
  it('two fans in parallel are one fan of twice the air, and give less than twice', () => {
    const double: FanCurve = FAN.map(([p, q]) => [p, 2 * q] as const);
    const two = solved([FAN, FAN], bed(4));
    const one = solved([FAN], bed(4));
    expect(two.pressurePa).toBeCloseTo(solved([double], bed(4)).pressurePa, 6);
    expect(two.flowM3S).toBeGreaterThan(one.flowM3S);
    expect(two.flowM3S).toBeLessThan(2 * one.flowM3S);
    expect(two.fanFlowsM3S[0] + two.fanFlowsM3S[1]).toBeCloseTo(two.flowM3S, 12);
  });
  it('by hand: a straight fan curve that crosses the bed at a known airflow', () => {
    // At 0.05 m/s through 5 m the bed asks for 1.5 * 5 * 20700 * 0.0025 / ln(2.52) = 419.9 Pa.
    const pressure = (1.5 * 5 * 20700 * 0.05 ** 2) / Math.log(2.52);
    const curve: FanCurve = [
      [pressure - 100, 94.6 * 0.05 + 1],
      [pressure + 100, 94.6 * 0.05 - 1],
    ];
    expect(solved([curve], bed(5)).velocityMS).toBeCloseTo(0.05, 9);
  });
  it('says why instead of a number where the curves do not meet', () => {
    expect(operatingPoint([FAN], bed(40, { floorAreaM2: 5 }))).toEqual({
      ok: false,
      why: 'The bed asks for more than 1500 Pa, where a fan curve ends.',
    });
    const high: FanCurve = [
      [800, 3],
      [1500, 2],
    ];
    expect(operatingPoint([high], bed(1))).toEqual({
      ok: false,
      why: 'The bed asks for less than 800 Pa, where a fan curve begins.',
    });
    const weak: FanCurve = [
      [0, 3],
      [700, 1],
    ];
    expect(operatingPoint([high, weak], bed(4))).toMatchObject({ ok: false, why: /no static pressure in common/ });
    expect(operatingPoint([], bed(4))).toMatchObject({ ok: false, why: 'There is no fan curve.' });
  });
  it('tells when it had to carry the resistance beyond what was measured', () => {
    const small: FanCurve = [
      [0, 0.3],
      [1500, 0.1],
    ];
    expect(solved([small], bed(4)).inMeasuredRange).toBe(false);
  });
  it('refuses a bed and a fan curve that cannot be', () => {
    expect(() => operatingPoint([FAN], bed(Number.NaN))).toThrow(/depthM is NaN/);
    expect(() => operatingPoint([FAN], bed(5, { floorAreaM2: 0 }))).toThrow(/floorAreaM2 is 0/);
    expect(() => operatingPoint([[[0, 5]]], bed(5))).toThrow(/has 1 points/);
    expect(() => fanFlowM3S(FAN, 1600)).toThrow(/pressurePa is 1600; it must lie between 0 and 1500/);
    expect(() =>
      assertFanCurve([
        [0, 5],
        [0, 4],
      ]),
    ).toThrow(/point 2 pressurePa/);
    expect(() =>
      assertFanCurve([
        [0, 5],
        [300, 6],
      ]),
    ).toThrow(/point 2 flowM3S is 6; it must lie between 0 and 5/);
  });
});

describe('fan heat', () => {
  it('is one by power and by pressure', () => {
    const power = airPowerW(900, 5) / 0.55;
    expect(fanWarmingK(power, 5, 1.2)).toBeCloseTo(fanWarmingByPressureK(900, 0.55, 1.2), 12);
  });
  it('is less in damp air, by its specific heat', () => {
    expect(fanWarmingK(7457, 5, 1.2, 1050) / fanWarmingK(7457, 5, 1.2)).toBeCloseTo(1006 / 1050, 12);
    expect(fanWarmingByPressureK(900, 0.5, 1.2, 1050) / fanWarmingByPressureK(900, 0.5, 1.2)).toBeCloseTo(
      1006 / 1050,
      12,
    );
  });
  // Common practice, also stated by NDSU (2010, 2019): air warms 3 to 5 degF through the fan at 4 to 6 inches.
  it.each([4, 5, 6])('at %d inches of water is 3 to 5 degF for a fan of 50 to 55 %% (common practice)', (inches) => {
    for (const efficiency of [0.5, 0.55]) {
      const warmingF = 1.8 * fanWarmingByPressureK(inches * 249.08891, efficiency, 1.2);
      expect(warmingF).toBeGreaterThan(2.5);
      expect(warmingF).toBeLessThan(5.5);
    }
  });
  it('refuses no air and no numbers', () => {
    expect(() => fanWarmingK(1000, 0, 1.2)).toThrow(/flowM3S is 0/);
    expect(() => fanWarmingByPressureK(500, Number.NaN, 1.2)).toThrow(/efficiency is NaN/);
  });
});
