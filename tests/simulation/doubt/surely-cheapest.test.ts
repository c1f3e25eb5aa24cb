import { describe, expect, it } from 'vitest';
import { clearlyCheapest, surelyCheapest, type Tried } from '../../../src/simulation/doubt/surely-cheapest.ts';

const there = (...costs: number[]): Tried[] => costs.map((cost) => ({ cost, reached: true }));
const misses = (cost: number): Tried => ({ cost, reached: false });

// By hand.
describe('surelyCheapest', () => {
  it('is the least mean regret of those as often as cheap as the cheapest, not the cheapest as fitted', () => {
    // Cheapest of the runs: 80, 100, 90; within 5 % never, in two, in two. Regrets of the second: 0, 0.5 (of 0.6), 0; of the third: 0.1, 0, 0.05.
    const found = surelyCheapest([there(120, 150, 135), there(80, 160, 90), there(88, 100, 94.5)]);
    expect(found).toMatchObject({ index: 2, sure: true });
    expect(found?.cost).toBeCloseTo(282.5 / 3, 10);
    expect(found?.regret).toBeCloseTo(0.05, 10);
  });

  it('is the one that is as cheap as the cheapest in more runs, though by the mean it regrets more', () => {
    // Cheapest: 104, 100, 100. Within 5 % the first in two, the second in one; mean regrets 0.15 (0, 0.04, 0.4) and 0.05 (0.02, 0.06, 0.06).
    const least = [misses(90), ...there(100, 100)];
    const found = surelyCheapest([there(104, 104, 140), there(106, 106, 106), least]);
    expect(found).toMatchObject({ index: 0, near: [2, 1, 2] });
  });

  it('leaves one that often misses in a doubt, and one that misses as fitted', () => {
    // Regrets: 0, 0.5, 0.5 against 0.2, 0, 0.
    const cheap = [...there(100), misses(50), misses(50)];
    expect(surelyCheapest([cheap, [misses(10)], there(120, 110, 120)])).toMatchObject({ index: 2, sure: true });
  });

  it('names one that seldom misses before one far dearer, and says that it is not sure', () => {
    // Regrets: 0, 0, 0.5 against 0.5 (of 1), 0.5, 0.
    const seldom = [...there(100, 100), misses(120)];
    const found = surelyCheapest([there(200, 200, 200), seldom]);
    expect(found).toMatchObject({ index: 1, sure: false });
    expect(found?.regret).toBeCloseTo(1 / 6, 10);
  });

  it('counts the runs in which each is as cheap as the cheapest, and calls it so in nine of ten', () => {
    // Cheapest: 100, 100, 100, 90; the second within 5 % in the first three, the third in one, where the second misses.
    const found = surelyCheapest([
      there(100, 100, 100, 110),
      [...there(105, 104, 101), misses(90)],
      there(120, 120, 120, 90),
    ]);
    expect(found).toMatchObject({ index: 0, near: [3, 3, 1], runs: 4 });
    expect(clearlyCheapest({ index: 0, near: [9], runs: 10 })).toBe(true);
    expect(clearlyCheapest({ index: 0, near: [10], runs: 12 })).toBe(false);
  });

  it('holds a run against one that comes there in it alone, and does not name that', () => {
    const late = [misses(50), ...there(80, 80, 80)];
    const found = surelyCheapest([there(100, 100, 100, 100), late]);
    expect(found).toMatchObject({ index: 0, near: [1, 3] });
    // By hand: 0, and 100 over 80 three times.
    expect(found?.regret).toBeCloseTo(0.75 / 4, 10);
    expect(clearlyCheapest(found!)).toBe(false);
  });

  it('is null where none reaches, or the tariff is not known', () => {
    expect(surelyCheapest([[misses(10)], []])).toBeNull();
    expect(surelyCheapest([there(Number.NaN, Number.NaN)])).toBeNull();
  });

  it('is the first of equals, and knows free power', () => {
    expect(surelyCheapest([there(20, 30), there(20, 30)])?.index).toBe(0);
    expect(surelyCheapest([there(3, 3), there(0, 0)])).toMatchObject({ index: 1, regret: 0 });
  });
});
