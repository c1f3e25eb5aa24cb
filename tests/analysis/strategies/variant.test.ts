import { describe, expect, it } from 'vitest';
import { madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { runStrategy } from '../../../src/analysis/strategies/run-strategy.ts';
import { withAirflow, withStartMoisture } from '../../../src/analysis/strategies/variant.ts';

const [bin] = madeFarm({ bins: 1, years: 1, days: 100, layers: 10 }).bins;
const spec = bin.spec!;

describe('withAirflow', () => {
  const { blower } = spec.levels[0];

  // ASAE D272.3, corn: a = 20700 Pa s2/m3, b = 30.4 m2 s/m3 (from memory). By hand at 0.067 m/s:
  // 20700 v^2 / ln(1 + 30.4 v) = 83.4 Pa/m, at twice the air 229 Pa/m.
  it('raises pressure by the resistance curve, power by air times pressure', () => {
    const doubled = withAirflow(spec, 2).levels[0].blower;
    expect(doubled.airM3M2S).toBeCloseTo(0.134, 12);
    expect(doubled.warmingK / blower.warmingK).toBeCloseTo(229 / 83.4, 1);
    expect(doubled.powerW / blower.powerW).toBeCloseTo((2 * 229) / 83.4, 1);
  });

  // Between laminar flow (pressure as the air) and turbulent flow (as its square): a law of fans and beds, textbook.
  it('keeps between the linear and the square law', () => {
    for (const factor of [0.5, 0.75, 1.25, 1.5, 2]) {
      const pressure = withAirflow(spec, factor).levels[0].blower.warmingK / blower.warmingK;
      const ends = [factor, factor ** 2].sort((a, b) => a - b);
      expect(pressure).toBeGreaterThan(ends[0]);
      expect(pressure).toBeLessThan(ends[1]);
    }
  });

  it('leaves a heater its output', () => {
    const heated = { ...spec, levels: [{ ...spec.levels[0], blower: { ...blower, heaterK: 6, heaterW: 40_000 } }] };
    const doubled = withAirflow(heated, 2).levels[0].blower;
    expect(doubled.heaterK * doubled.airM3M2S).toBeCloseTo(6 * blower.airM3M2S, 12);
    expect(doubled.heaterW).toBe(40_000);
  });

  it('dries sooner with more air', () => {
    const end = (factor: number) =>
      runStrategy(withAirflow(spec, factor), 'always-on', { logged: null }).outcome?.reachedHour ?? Number.NaN;
    expect(end(1)).toBeGreaterThan(0);
    expect(end(2)).toBeLessThan(end(1));
  });
});

describe('withStartMoisture', () => {
  it('moves the wet basis by points', () => {
    const db = withStartMoisture(spec, 2).levels[0].moistureDb;
    expect(db / (1 + db)).toBeCloseTo(0.2, 12);
    const start = { tempC: new Float64Array(10).fill(10), moistureDb: new Float64Array(10).fill(0.25) };
    const moved = withStartMoisture({ ...spec, start }, -1).start!.moistureDb[3];
    expect(moved / (1 + moved)).toBeCloseTo(0.19, 12);
  });
});
