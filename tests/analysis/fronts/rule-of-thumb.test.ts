import { describe, expect, it } from 'vitest';
import { handbookHours, ruleOfThumbHours } from '../../../src/analysis/fronts/rule-of-thumb.ts';

describe('rule of thumb for a cooling front', () => {
  // Iowa State University Extension, Cool stored grain now, 28 Oct 2021: hours = 15 / (cfm per bushel).
  it.each([
    [0.2, 75],
    [0.25, 60],
    [0.75, 20],
  ])('Iowa State: %f cfm/bu takes %f h', (cfm, hours) => {
    expect(ruleOfThumbHours(cfm)).toBeCloseTo(hours, 9);
  });

  // NDSU Extension, natural-air drying concepts, 2020: at 1 cfm/bu about 15 hours. University of Kentucky, 9 Oct 2002: the
  // same for 10 hp on 10,000 bu, about 1 cfm/bu. NDSU / Univ. of Minnesota Small Grains Field Guide: 0.2 cfm/bu, about three
  // days. World-Grain, Aeration strategies: 0.05 cfm/bu about 300 h, at 0.1 half of that.
  it.each([
    [1, 15],
    [0.2, 75],
    [0.05, 300],
    [0.1, 150],
  ])('other published figures: %f cfm/bu takes %f h', (cfm, hours) => {
    expect(ruleOfThumbHours(cfm)).toBeCloseTo(hours, 9);
  });

  // MWPS-13 / AED-20 cooling times for the fall (from memory, not checked); 0.33 cfm/bu is printed as 45 h (1/3 cfm/bu).
  it.each([
    [0.05, 300],
    [0.1, 150],
    [0.25, 60],
    [0.33, 45],
    [0.5, 30],
    [0.75, 20],
    [1, 15],
  ])('handbook, fall cooling: %f cfm/bu takes %f h', (cfm, hours) => {
    expect(Math.abs(ruleOfThumbHours(cfm) - hours)).toBeLessThanOrEqual(0.5);
  });

  // The same table for winter and spring (from memory, not checked); 0.33 cfm/bu is printed as for 1/3.
  it.each([
    ['winter', 0.1, 200],
    ['winter', 0.25, 80],
    ['winter', 0.33, 61],
    ['winter', 1, 20],
    ['spring', 0.1, 120],
    ['spring', 0.2, 60],
    ['spring', 0.33, 36],
    ['spring', 0.75, 16],
    ['spring', 1.25, 10],
  ] as const)('handbook, %s: %f cfm/bu takes %f h', (season, cfm, hours) => {
    expect(Math.abs(handbookHours(season, cfm) - hours)).toBeLessThanOrEqual(0.5);
  });

  it('refuses no airflow', () => {
    expect(() => ruleOfThumbHours(0)).toThrow(RangeError);
    expect(() => ruleOfThumbHours(Number.NaN)).toThrow(RangeError);
  });
});
