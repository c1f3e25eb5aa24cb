import { describe, expect, it } from 'vitest';
import { shrunkenMeans } from '../../../src/base/stats/shrunken-means.ts';

describe('shrunkenMeans', () => {
  it('gives the published estimates of eighteen batting averages', () => {
    // B. Efron, C. Morris, Stein's paradox in statistics, Scientific American 236 (1977) 5, 119-127 (from memory): means of 45 trials each, all
    // drawn towards 0.265 to 0.212 of their distance; 0.400 becomes 0.294.
    const averages = [
      0.4, 0.378, 0.356, 0.333, 0.311, 0.311, 0.289, 0.267, 0.244, 0.244, 0.222, 0.222, 0.222, 0.222, 0.222, 0.2, 0.178,
      0.156,
    ];
    const found = shrunkenMeans(averages, Math.sqrt((0.265 * 0.735) / 45));
    expect(found[0].mean).toBeCloseTo(0.294, 3);
    expect((found[0].mean - found[17].mean) / (0.4 - 0.156)).toBeCloseTo(0.212, 2);
  });

  it('leaves readings alone that differ by far more than their errors, and those of fewer than four places', () => {
    const apart = shrunkenMeans([10, 12, 14, 16, 18, 20], 0.01);
    for (const [i, one] of apart.entries()) {
      expect(one.mean).toBeCloseTo(10 + 2 * i, 4);
      expect(one.sd).toBeCloseTo(0.01, 4);
    }
    expect(shrunkenMeans([1, 2, 4], 1)).toEqual([1, 2, 4].map((mean) => ({ mean, sd: 1 })));
  });

  it('leaves one place that stands far off all others as it reads', () => {
    const even = Array.from({ length: 40 }, (_, i) => 14 + 0.2 * Math.sin(3 * i));
    const found = shrunkenMeans([...even, 16], 0.25);
    expect(found[40]).toEqual({ mean: 16, sd: 0.25 });
    // The others are drawn as if it were not there.
    expect(found.slice(0, 40)).toEqual(shrunkenMeans(even, 0.25));
  });

  it('keeps order and mean, and stands for alike readings too', () => {
    const found = shrunkenMeans([5, 1, 3, 2, 4], 2).map((one) => one.mean);
    expect([...found].sort((a, b) => b - a)).toEqual([found[0], found[4], found[2], found[3], found[1]]);
    expect(found.reduce((all, one) => all + one, 0)).toBeCloseTo(15, 12);
    for (const one of shrunkenMeans([7, 7, 7, 7], 1)) expect(one.mean).toBe(7);
  });
});
