import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import type { FitSamples } from '../../../src/analysis/model/fit-samples.ts';
import type { Shown } from '../../../src/analysis/model/play-cable.ts';
import { sensorOffsets } from '../../../src/analysis/model/sensor-offsets.ts';

/** Ten reads of two sensors, the bed at 15 %. */
const READS = 10;
const offsetsOf = (tooMuch: readonly [number, number]) => {
  const moistureWb = Float64Array.from({ length: 2 * READS }, (_, i) => 0.15 + tooMuch[i % 2]);
  const samples = { cables: [{ sensors: 2, moistureWb }] } as unknown as FitSamples;
  const shown = [{ moistureWb: new Float64Array(2 * READS).fill(0.15) }] as unknown as Shown[];
  // 0.588 point is what 95 % of sensors keep: 0.3 as a standard error, as much as the bed may lie off.
  const log = { season: { sensors: { moisture: { accuracyWb: 0.00588 } } } } as unknown as BinLog;
  return sensorOffsets(log, samples, shown, 0, READS)[0];
};

describe('what a moisture sensor reads too much', () => {
  it('is half of its distance from the bed where sensor and bed may err alike', () => {
    const [small, none] = offsetsOf([0.002, 0]);
    expect(small).toBeCloseTo(0.001, 5);
    expect(none).toBe(0);
  });

  it('is all of it where no sensor as stated lies so far off: six points', () => {
    const [far] = offsetsOf([0.06, 0]);
    expect(far).toBeGreaterThan(0.0598);
    expect(far).toBeLessThan(0.06);
  });
});
