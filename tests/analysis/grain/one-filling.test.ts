import { describe, expect, it } from 'vitest';
import { fillTimes } from '../../../src/analysis/grain/fill-times.ts';
import { unitCosts } from '../../../src/analysis/unit-costs/unit-costs.ts';
import { estimate } from '../../../src/base/estimate.ts';
import { FAN_T, bin as ofFans, powerRows, rest, review, seasonOf } from '../energy/by-hand-season.ts';
import { makeBin } from '../moisture/make-bin.ts';

const depths = (...depthM: number[]) => depthM.map((one, i) => ({ fromMs: 1000 * (i + 1), depthM: one }));
const binOf = (...depthM: number[]) => makeBin([], { depthSteps: depths(...depthM), filledMs: null, unloadedMs: null });

describe('a bin that is emptied and filled again', () => {
  it('is told by its depths: grain of a tenth of the full depth that comes in after some was taken out', () => {
    expect(fillTimes(binOf(6, 0, 5)).refilledMs).toBe(3000);
    expect(fillTimes(binOf(2, 4, 6, 3, 1, 2)).refilledMs).toBe(6000);
    expect(fillTimes(binOf(6, 0, 5)).notes.join(' ')).toContain('filled again');
    // Filled in steps, drawn down, levelled by a foot of six metres.
    for (const once of [binOf(2, 4, 6), binOf(6, 4, 2, 0), binOf(6, 4, 4.3, 0)]) {
      expect(fillTimes(once).refilledMs).toBeUndefined();
    }
  });

  it('has no cost a point or a bushel: the fans ran for two grains, points and bushels are those of one', () => {
    const points = { pointsRemoved: estimate(3, 2.7, 3.3) };
    const told = unitCosts(binOf(6, 0, 5), { cost: estimate(900, 900, 900) }, points, 15_000);
    expect(told.costPerPoint.value).toBeNull();
    expect(told.why).toContain('filled again');
    expect(unitCosts(binOf(6, 4, 0), { cost: estimate(900, 900, 900) }, points, 15_000).costPerPoint.value).toBe(300);

    const own = ofFans('B1', ['F1']);
    const twice = { ...own, grain: { ...own.grain, depthSteps: depths(6, 0, 5) } };
    const got = review(powerRows([rest(10), [100, 15_000], rest(10)]), seasonOf([FAN_T], [twice]));
    expect(got.cost.value).not.toBeNull();
    expect(got.costPerBushel.value).toBeNull();
    expect(got.kwhPerBushel.why).toContain('filled again');
    expect(got.why).toContain('filled again');
  });
});
