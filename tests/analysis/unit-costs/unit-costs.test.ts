import { describe, expect, it } from 'vitest';
import { unitCosts } from '../../../src/analysis/unit-costs/unit-costs.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { makeBin } from '../moisture/make-bin.ts';

const DRY = makeBin([]);
const CONDITION = makeBin([], {}, { goal: 'condition' });
const cost = (value: number, half: number) => ({ cost: estimate(value, value - half, value + half) });
const points = (value: number, half: number) => ({ pointsRemoved: estimate(value, value - half, value + half) });

describe('unitCosts', () => {
  // 900 over 3 points: 300 a point; over 15,000 bushels: 0.02. Ends by hand: 900/3.3 and 900/2.7.
  it('by hand', () => {
    const told = unitCosts(DRY, cost(900, 0), points(3, 0.3), 15_000);
    expect(told.costPerPoint.value).toBe(300);
    expect(told.costPerPoint.interval![0]).toBeCloseTo(900 / 3.3, 9);
    expect(told.costPerPoint.interval![1]).toBeCloseTo(900 / 2.7, 9);
    expect(told.perBushelPoint.value).toBeCloseTo(0.02, 12);
    expect(told.why).toBeNull();
    expect(told.costPerPointAdded.value).toBeNull();
    expect(told.whyAdded).toContain('run to dry the grain');
  });

  it('an unsure cost widens the interval', () => {
    const sure = unitCosts(DRY, cost(900, 0), points(3, 0.3), 1).costPerPoint.interval!;
    const unsure = unitCosts(DRY, cost(900, 90), points(3, 0.3), 1).costPerPoint.interval!;
    expect(unsure[0]).toBeLessThan(sure[0]);
    expect(unsure[1]).toBeGreaterThan(sure[1]);
  });

  it('withheld where the points reach zero, whatever the middle', () => {
    expect(unitCosts(DRY, cost(900, 0), points(0.4, 0.5), 1).why).toContain('reaches zero');
    expect(unitCosts(DRY, cost(900, 0), points(0.5, 0.5), 1).costPerPoint.value).toBeNull();
    expect(unitCosts(DRY, cost(900, 0), points(-2, 0.5), 1).why).toContain('took up water');
  });

  it('conditioning pays for points added', () => {
    const told = unitCosts(CONDITION, cost(100, 0), points(-2, 0.5), 10_000);
    expect(told.costPerPointAdded.value).toBe(50);
    expect(told.costPerPointAdded.interval).toEqual([100 / 2.5, 100 / 1.5]);
    expect(told.perBushelPointAdded.value).toBeCloseTo(0.005, 12);
    expect(told.why).toContain('to add moisture');
  });

  it.each(['cool', 'hold'] as const)('no cost per point where the goal is %s', (goal) => {
    const told = unitCosts(makeBin([], {}, { goal }), cost(100, 0), points(1, 0.1), 1);
    expect(told.costPerPoint.value).toBeNull();
    expect(told.costPerPointAdded.value).toBeNull();
    expect(told.why).toContain('no meaning');
  });

  it('hands on why points or cost or bushels are lacking', () => {
    expect(unitCosts(DRY, { cost: withheld('No bill.') }, points(3, 1), 1).why).toBe('No bill.');
    expect(unitCosts(DRY, cost(1, 0), { pointsRemoved: withheld('No sensors.') }, 1).why).toBe('No sensors.');
    const told = unitCosts(DRY, cost(900, 0), points(3, 1), null);
    expect(told.costPerPoint.value).toBe(300);
    expect(told.why).toContain('bushels');
  });
});
