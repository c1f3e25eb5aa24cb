import { describe, expect, it } from 'vitest';
import { surelyCheapest, type Tried } from '../../../src/simulation/doubt/surely-cheapest.ts';

const there = (...costs: number[]): Tried[] => costs.map((cost) => ({ cost, reached: true }));
const misses = (cost: number): Tried => ({ cost, reached: false });

// By hand.
describe('surelyCheapest', () => {
  it('is the least mean cost of those that reach in every run', () => {
    expect(surelyCheapest([there(100, 100, 100), there(80, 150, 90), there(96, 99, 99)])).toEqual({
      index: 2,
      sure: true,
      cost: 98,
    });
  });

  it('leaves one that is cheap but misses in a doubt, and one that misses as fitted', () => {
    const cheap = [...there(50, 50), misses(50)];
    const missing = [misses(10)];
    expect(surelyCheapest([cheap, missing, there(100, 110, 120)])).toEqual({ index: 2, sure: true, cost: 110 });
  });

  it('says that it is not sure where every one misses in a doubt: the one that misses least, then the cheaper', () => {
    const often = [...there(50), misses(50), misses(50)];
    const dear = [...there(120, 120), misses(120)];
    const once = [...there(90, 100), misses(110)];
    expect(surelyCheapest([often, dear, once])).toEqual({ index: 2, sure: false, cost: 100 });
  });

  it('is null where none reaches, or the tariff is not known', () => {
    expect(surelyCheapest([[misses(10)], [], there(Number.NaN)])).toBeNull();
  });

  it('is the first of equals', () => {
    expect(surelyCheapest([there(20, 40), there(30, 30)])?.index).toBe(0);
  });
});
