import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import type { FitSamples } from '../../../src/analysis/model/fit-samples.ts';
import type { Shown } from '../../../src/analysis/model/play-cable.ts';
import { sensorOffsets } from '../../../src/analysis/model/sensor-offsets.ts';

const READS = 10;
/** Ten reads of sensors that read so much too much beside a bed at 15 %. */
const offsetsOf = (tooMuch: readonly number[]) => {
  const sensors = tooMuch.length;
  const moistureWb = Float64Array.from({ length: sensors * READS }, (_, i) => 0.15 + tooMuch[i % sensors]);
  const samples = { cables: [{ sensors, moistureWb }] } as unknown as FitSamples;
  const shown = [{ moistureWb: new Float64Array(sensors * READS).fill(0.15) }] as unknown as Shown[];
  // 0.588 point is what 95 % of sensors keep: 0.3 as a standard error, as much as the bed may lie off.
  const log = { season: { sensors: { moisture: { accuracyWb: 0.00588 } } } } as unknown as BinLog;
  return sensorOffsets(log, samples, shown, 0, READS)[0];
};

describe('what a moisture sensor reads too much', () => {
  it('is half of its distance from the bed where sensor and bed may err alike', () => {
    const [small, none, other] = offsetsOf([0.002, 0, -0.002]);
    expect(small).toBeCloseTo(0.001, 5);
    expect(none).toBe(0);
    expect(other).toBeCloseTo(-0.001, 5);
  });

  it('is all of what parts it from the others where no sensor as stated lies so far off: six points', () => {
    const [far] = offsetsOf([0.06, 0, 0.001]);
    expect(far).toBeGreaterThan(0.059);
    expect(far).toBeLessThan(0.06);
  });

  it('is half of the distance where all lie off alike: that is the bed’s or the shared bias’s', () => {
    for (const one of offsetsOf([0.03, 0.03, 0.03])) expect(one).toBeCloseTo(0.015, 4);
  });
});
