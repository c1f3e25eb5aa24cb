import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/base/estimate.ts';
import { median, quantile, trimmedMean } from '../../../src/base/stats/quantile.ts';
import { ratioInterval } from '../../../src/base/stats/ratio-interval.ts';
import { tQuantile } from '../../../src/base/stats/t-quantile.ts';
import { weightedMean, weightedQuantile } from '../../../src/base/stats/weighted.ts';

describe('tQuantile', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, upper critical values of Student's t, column 0.95.
  it.each([
    [1, 6.314],
    [2, 2.92],
    [3, 2.353],
    [4, 2.132],
    [10, 1.812],
    [30, 1.697],
    [100, 1.66],
    [Number.POSITIVE_INFINITY, 1.645],
  ])('95 %% of t with %d degrees of freedom lies below %d', (degrees, expected) => {
    expect(tQuantile(0.95, degrees)).toBeCloseTo(expected, 3);
    expect(tQuantile(0.05, degrees)).toBeCloseTo(-expected, 3);
  });

  it('refuses what is no degree of freedom', () => {
    expect(() => tQuantile(0.95, 0)).toThrow(RangeError);
    expect(() => tQuantile(0.95, Number.NaN)).toThrow(RangeError);
    expect(() => tQuantile(1.2, 3)).toThrow(RangeError);
  });
});

describe('weighted numbers', () => {
  // (1*1 + 2*3)/4 = 1.75; ((0.75)^2*1 + (0.25)^2*3)/4 = 0.1875
  it('mean by hand', () => {
    expect(weightedMean([1, 2, Number.NaN], [1, 3, 9])).toBe(1.75);
    expect(weightedMean([Number.NaN], [1])).toBeNaN();
  });

  it('quantile steps through the weights', () => {
    expect(weightedQuantile([30, 10, 20], [1, 1, 2], 0.25)).toBe(10);
    expect(weightedQuantile([30, 10, 20], [1, 1, 2], 0.5)).toBe(20);
    expect(weightedQuantile([30, 10, 20], [1, 1, 2], 0.9)).toBe(30);
    expect(weightedQuantile([], [], 0.5)).toBeNaN();
  });
});

describe('centre', () => {
  it('leaves missing values out', () => {
    expect(median([3, Number.NaN, 1, 2])).toBe(2);
    expect(median([])).toBeNaN();
    expect(quantile([0, 10, 20, 30, 40], 0.25)).toBe(10);
  });

  // ten values, 10 % off each end: (2+…+9)/8 = 5.5, not the 105.4 of the mean with the spike
  it('trims a spike away', () => {
    expect(trimmedMean([1, 2, 3, 4, 5, 6, 7, 8, 9, 1009], 0.1)).toBe(5.5);
    expect(trimmedMean([4], 0.1)).toBe(4);
  });
});

describe('ratioInterval', () => {
  // 300 +- 0 over 3 +- 1: all ratios with |300 - 3r| <= r, so 300/4 = 75 to 300/2 = 150
  it('is the plain division of the ends where only the lower number is unsure', () => {
    const ratio = ratioInterval(estimate(300, 300, 300), estimate(3, 2, 4), 'no');
    expect(ratio.value).toBe(100);
    expect(ratio.interval![0]).toBeCloseTo(75, 9);
    expect(ratio.interval![1]).toBeCloseTo(150, 9);
  });

  // 100 +- 10 over 2 +- 0
  it('is the scaled interval where only the upper number is unsure', () => {
    expect(ratioInterval(estimate(100, 90, 110), { value: 2, interval: null, why: null }, 'no').interval).toEqual([
      45, 55,
    ]);
  });

  it('gives a reason where the lower number may be zero', () => {
    expect(ratioInterval(estimate(300, 290, 310), estimate(0.5, -0.1, 1.1), 'it may be zero').why).toBe(
      'it may be zero',
    );
  });

  // By hand. 300 over 3, from 2 to 7: no zero is near, though the upper side is longer than the number: 300 / 7 to 300 / 2.
  // The same with both signs turned below. With top unsure too, 90 to 110 over 2 from 1 to 6: the lower end solves
  // (100 - 2 r)^2 = 10^2 + (4 r)^2, 12 r^2 + 400 r - 9900 = 0, r = (-400 + sqrt(635200)) / 24 = 16.5415.
  it('asks only how near to zero the lower number comes', () => {
    const lopsided = ratioInterval(estimate(300, 300, 300), estimate(3, 2, 7), 'no').interval ?? [];
    expect(lopsided[0]).toBeCloseTo(300 / 7, 9);
    expect(lopsided[1]).toBeCloseTo(150, 9);
    const turned = ratioInterval(estimate(300, 300, 300), estimate(-3, -7, -2), 'no').interval ?? [];
    expect(turned[0]).toBeCloseTo(-150, 9);
    expect(turned[1]).toBeCloseTo(-300 / 7, 9);
    expect(ratioInterval(estimate(100, 90, 110), estimate(2, 1, 6), 'no').interval?.[0]).toBeCloseTo(16.5415, 3);
    // The upper side just as long as the number: 300 over 3 up to 6.
    expect(ratioInterval(estimate(300, 300, 300), estimate(3, 2, 6), 'no').interval?.[0]).toBeCloseTo(50, 6);
    expect(ratioInterval(estimate(300, 300, 300), estimate(-3, -7, 0.5), 'near zero').why).toBe('near zero');
  });

  // By hand. A fan whose log is half silent: 135 to 1,235 over 4 +- 0 is 33.75 to 308.75, and no cost below 33.75.
  // 300 over 3, from 2.5 to 5: 300 / 5 = 60 to 300 / 2.5 = 120. 100 over 2, from 1.8 to 2.3, and 100 from 97 to 104:
  // each end solves (100 - 2 r)^2 = hTop^2 + r^2 hBottom^2 for its own sides: 3 and 0.3, then 4 and 0.2.
  it('keeps a lopsided interval lopsided', () => {
    const ends = (top: [number, number, number], bottom: [number, number, number]) =>
      ratioInterval(estimate(...top), estimate(...bottom), 'no').interval ?? [Number.NaN, Number.NaN];
    expect(ends([135, 135, 1235], [4, 4, 4])).toEqual([33.75, 308.75]);
    expect(ends([300, 300, 300], [3, 2.5, 5])[0]).toBeCloseTo(60, 9);
    expect(ends([300, 300, 300], [3, 2.5, 5])[1]).toBeCloseTo(120, 9);
    const [low, high] = ends([100, 97, 104], [2, 1.8, 2.3]);
    expect((100 - 2 * low) ** 2).toBeCloseTo(3 ** 2 + (0.3 * low) ** 2, 6);
    expect((100 - 2 * high) ** 2).toBeCloseTo(4 ** 2 + (0.2 * high) ** 2, 6);
    expect(low).toBeLessThan(50);
    expect(high).toBeGreaterThan(50);
    // The mirror of the same numbers: what was the low end is the high one.
    expect(ends([-100, -104, -97], [2, 1.8, 2.3])[1]).toBeCloseTo(-low, 9);
    expect(ends([100, 97, 104], [-2, -2.3, -1.8])[0]).toBeCloseTo(-high, 9);
    // An end beyond zero: 1 - 5 over 2, at its least 1.5. (1 - 2 r)^2 = 5^2 + (0.5 r)^2
    const [below] = ends([1, -4, 2], [2, 1.5, 2.9]);
    expect(below).toBeLessThan(-2);
    expect((1 - 2 * below) ** 2).toBeCloseTo(5 ** 2 + (0.5 * below) ** 2, 6);
  });

  it('works for numbers below zero', () => {
    const ratio = ratioInterval(estimate(300, 300, 300), estimate(-3, -4, -2), 'no');
    expect(ratio.interval![0]).toBeCloseTo(-150, 9);
    expect(ratio.interval![1]).toBeCloseTo(-75, 9);
  });
});
