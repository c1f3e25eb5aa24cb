import { describe, expect, it } from 'vitest';
import { sensorLean } from '../../../src/analysis/condition/sensor-lean.ts';

const shares = (starts: readonly (number | null)[]) => ({
  shares: starts.map((startWb, i) => ({
    cable: 'C1',
    sensor: i + 1,
    heightM: i,
    share: 1 / starts.length,
    startWb,
    endWb: null,
    startC: null,
    endC: null,
  })),
});
/** limit of 95 % of sensors for a standard error of half a point */
const LIMIT = 0.005 * 1.959964;

describe('what is taken off a sensor', () => {
  it('is all of its difference where sensors differ by no more than their errors', () => {
    // Variance of 17.6, 18.4, 17.6, 18.4 about 18: 4 x 0.16 / 3 = 0.213 point², under the error's 0.25.
    const { offWb, leftSdWb } = sensorLean(shares([0.176, 0.184, 0.176, 0.184]), LIMIT);
    expect(offWb('C1', 2)).toBeCloseTo(0.004, 12);
    expect(leftSdWb).toBe(0);
  });
  it('is the part that error has in the variance seen, by hand', () => {
    // 17, 19, 17, 19: 4 x 1 / 3 = 1.333 point² seen, 0.25 of it error: 18.75 % of each difference, and the root of 0.8125 x 0.25 is left.
    const { offWb, leftSdWb } = sensorLean(shares([0.17, 0.19, 0.17, 0.19]), LIMIT);
    expect(offWb('C1', 1)).toBeCloseTo(-0.01 * 0.1875, 7);
    expect(leftSdWb).toBeCloseTo(0.01 * Math.sqrt(0.8125 * 0.25), 7);
  });
  it('is nothing of a sensor whose start is not known', () => {
    expect(sensorLean(shares([0.17, null, 0.19]), LIMIT).offWb('C1', 2)).toBe(0);
    expect(sensorLean(shares([]), LIMIT).offWb('C1', 1)).toBe(0);
  });
});
