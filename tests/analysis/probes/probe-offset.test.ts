import { describe, expect, it } from 'vitest';
import { countedPairs, probeOffset } from '../../../src/analysis/probes/probe-offset.ts';
import type { ProbePair } from '../../../src/analysis/probes/probe-types.ts';

const pair = (offset: number, rest: Partial<ProbePair> = {}): ProbePair => ({
  reading: { timeMs: 0, heightM: 1, fromCentreM: 0, moistureWb: 0.15, tempC: 10 },
  cables: ['C'],
  sensors: ['C 1'],
  cableWb: 0.15 + offset / 100,
  air: 'still',
  byCable: [],
  between: 0,
  offset,
  sd: 0.3,
  cold: false,
  counted: true,
  ...rest,
});

describe('probeOffset', () => {
  it('is the weighted mean; the meter’s own error does not average out', () => {
    // 0.4 and 0.6, sd 0.3 each: mean 0.5, 0.3 / sqrt 2 = 0.21213; the meter 0.5 / 1.96 = 0.25511;
    // together 0.33178, times 1.64485 = 0.54573.
    const { offset, pairs } = probeOffset([pair(0.4), pair(0.6)], 0.5);
    expect(pairs).toBe(2);
    expect(offset.value).toBeCloseTo(0.5, 12);
    expect(offset.interval![1] - 0.5).toBeCloseTo(0.54573, 4);
  });

  it('weighs by the standard errors', () => {
    // Weights 1/0.09 and 1/0.36: (4 * 0.2 + 1.2) / 5 = 0.4.
    expect(probeOffset([pair(0.2), pair(1.2, { sd: 0.6 })], 0.5).offset.value).toBeCloseTo(0.4, 12);
  });

  it('lets samples that scatter more than they should widen the interval', () => {
    const tight = probeOffset([pair(0.4), pair(0.5), pair(0.6)], 0.5).offset.interval!;
    const loose = probeOffset([pair(-0.9), pair(0.5), pair(1.9)], 0.5).offset.interval!;
    expect(loose[1] - loose[0]).toBeGreaterThan(2 * (tight[1] - tight[0]));
  });

  it('is withheld without samples', () => {
    expect(probeOffset([], 0.5).offset.value).toBeNull();
  });
});

describe('countedPairs', () => {
  it('leaves cold samples out beside three warm ones', () => {
    const { pairs, meterLimit } = countedPairs([pair(0.1), pair(0.2), pair(0.3), pair(1.5, { cold: true })]);
    expect(pairs.map((one) => one.counted)).toEqual([true, true, true, false]);
    expect(meterLimit).toBe(0.5);
  });
  it('takes cold ones at twice the limit where there are too few warm', () => {
    const { pairs, meterLimit } = countedPairs([pair(0.1), pair(0.2, { cold: true })]);
    expect(pairs.every((one) => one.counted)).toBe(true);
    expect(meterLimit).toBe(1);
  });
  it('never counts cables read in moving air', () => {
    const { pairs } = countedPairs([pair(-2, { air: 'moving' }), pair(0.1)]);
    expect(pairs.map((one) => one.counted)).toEqual([false, true]);
  });
  it('leaves out one far from all others among five', () => {
    const { pairs, far } = countedPairs([pair(0.1), pair(0.2), pair(0.3), pair(0.2), pair(3.6)]);
    expect(pairs.map((one) => one.counted)).toEqual([true, true, true, true, false]);
    expect(far).toBe(1);
  });
});
