import { describe, expect, it } from 'vitest';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import type { View } from '../../../src/simulation/run/view.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { dryingThenCooling } from '../../../src/simulation/strategies/drying-then-cooling.ts';
import { MEMORY } from '../../../src/simulation/strategies/strategy.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';
import { inventedBin, inventedHours } from '../run/invented-bin.ts';
import { viewOf } from './view-of.ts';

/** Always-on through some moments. */
function ran(goal: RunSpec['goal'], moments: readonly Partial<View>[]): number[] {
  const memory = new Float64Array(MEMORY);
  const strategy = untilReached(alwaysOn, goal);
  return moments.map((view) => strategy.fan(viewOf(view), {}, memory));
}

describe('untilReached', () => {
  it('dries to the target with no layer far above, rests, and goes on beyond what the contract lets pass', () => {
    const targetC = Number.NaN;
    const moments = [
      { grainWb: 0.151, wettestWb: 0.16, targetC },
      { grainWb: 0.15, wettestWb: 0.164, targetC },
      { grainWb: 0.15, wettestWb: 0.162, targetC },
      { grainWb: 0.1515, wettestWb: 0.164, targetC },
      { grainWb: 0.1521, wettestWb: 0.164, targetC },
      { grainWb: 0.1515, wettestWb: 0.164, targetC },
    ];
    // Goes on above 15.2 %, and with a layer above 16.5 %.
    expect(ran('dry', [...moments, { ...moments[2] }, { ...moments[2], wettestWb: 0.166 }])).toEqual([
      1, 1, 0, 0, 1, 1, 0, 1,
    ]);
  });

  it('dries what became too wet again by air that dries only', () => {
    const targetC = Number.NaN;
    const dry = { grainWb: 0.15, wettestWb: 0.16, targetC };
    const wetAgain = { grainWb: 0.153, wettestWb: 0.16, targetC };
    const moments = [
      { ...wetAgain, plenumEmcWb: 0.16 },
      dry,
      { ...wetAgain, plenumEmcWb: 0.151 },
      { ...wetAgain, plenumEmcWb: 0.149 },
    ];
    // Before it was dry, what the strategy says holds.
    expect(ran('dry', moments)).toEqual([1, 0, 0, 1]);
  });

  it('cools what it has dried where a temperature is stated, in stages, by cooler air that does not wet it', () => {
    const dry = { grainWb: 0.15, wettestWb: 0.16, grainC: 14 };
    const moments = [
      // A stage begins with air cooler by 5.6 K and goes on down to 1.5 K.
      { ...dry, plenumC: 9 },
      { ...dry, plenumC: 8 },
      { ...dry, plenumC: 12 },
      { ...dry, plenumC: 12, plenumEmcWb: 0.164 },
      { ...dry, plenumC: 12 },
      { ...dry, plenumC: 13 },
      { ...dry, plenumC: 12 },
      { ...dry, plenumC: -5, grainC: 4 },
    ];
    expect(ran('dry', moments)).toEqual([0, 1, 1, 0, 1, 0, 0, 0]);
  });

  it.each(['cool', 'hold'] as const)(
    'of goal %s: cools to the temperature; colder grain is no reason to run',
    (goal) => {
      const moments = [
        { grainC: 5, warmestC: 6 },
        { grainC: 4, warmestC: 7 },
        { grainC: 4, warmestC: 6.7 },
        { grainC: 6.7, warmestC: 9 },
        // A warm day at the rim.
        { grainC: 5, warmestC: 10 },
        { grainC: 6.8, warmestC: 9, plenumC: 5 },
        // Cooled before: air that would warm it does not go in, as it did at first.
        { grainC: 6.8, warmestC: 9, plenumC: 6 },
        { grainC: 4, warmestC: 6 },
        { grainC: -3, warmestC: 0, plenumC: -10 },
      ];
      expect(ran(goal, moments)).toEqual([1, 1, 0, 0, 0, 1, 0, 0, 0]);
      expect(ran(goal, [{ targetC: Number.NaN, grainC: -10 }])).toEqual([1]);
    },
  );

  it('wets to the target whatever the layer where the air enters', () => {
    const at = (grainWb: number) => ({ grainWb, wettestWb: 0.18, plenumEmcWb: 0.165 });
    expect(ran('condition', [at(0.14), at(0.15), at(0.1485), at(0.1479)])).toEqual([1, 0, 0, 1]);
    // Later by air that wets only.
    const dryAir = { ...at(0.1479), plenumEmcWb: 0.149 };
    expect(ran('condition', [dryAir, at(0.15), dryAir, at(0.1479)])).toEqual([1, 0, 0, 1]);
  });

  it('evens what it has wetted by air a little drier than the target, until no layer is far above', () => {
    const wetted = (wettestWb: number, plenumEmcWb: number) => ({ grainWb: 0.15, wettestWb, plenumEmcWb });
    const moments = [
      { ...wetted(0.17, 0.15), grainWb: 0.149 },
      wetted(0.17, 0.139),
      wetted(0.17, 0.141),
      wetted(0.17, 0.149),
      wetted(0.17, 0.151),
      wetted(0.1631, 0.15),
      wetted(0.1629, 0.15),
    ];
    expect(ran('condition', moments)).toEqual([1, 0, 1, 1, 0, 1, 0]);
  });

  it('brings a bin to be wetted to its target with the layer where the air enters, which rest alone left too wet', () => {
    // Damp until long after the mean is there, then air in which corn comes to 14.9 %.
    const hours = inventedHours({ count: 24 * 90, tempC: () => 12, rh: (hour) => (hour < 24 * 60 ? 0.9 : 0.74) });
    const bin = inventedBin(hours, { goal: 'condition', moistureWb: 0.135 });
    const { outcome, trace } = runSeason(bin, untilReached(alwaysOn, 'condition'), {}, { trace: true });
    const rested = trace!.fan.indexOf(0);
    expect(rested).toBeLessThan(24 * 60);
    expect(trace!.layerWb[20 * rested]).toBeGreaterThan(0.165);
    expect(outcome.reachedTarget).toBe(true);
    expect(outcome.endMoistureWb).toBeGreaterThanOrEqual(0.148);
    expect(outcome.wettestWb).toBeLessThanOrEqual(0.165);
  });

  it('leaves a strategy that ends by itself as it is', () => {
    expect(untilReached(dryingThenCooling, 'dry')).toBe(dryingThenCooling);
  });

  it('ends a run at its target: reached, drier by no more than the last hour took, for fewer hours', () => {
    const hours = inventedHours({ count: 24 * 60, tempC: () => 12, rh: () => 0.6 });
    const bin = inventedBin(hours);
    const always = runSeason(bin, alwaysOn).outcome;
    const ended = runSeason(bin, untilReached(alwaysOn, 'dry')).outcome;
    expect(always.reachedTarget).toBe(true);
    expect(always.endMoistureWb).toBeLessThan(0.14);
    expect(ended.reachedTarget).toBe(true);
    expect(ended.fanHours).toBeLessThan(always.fanHours);
    // The mean is at the target or, where the wettest layer came last, below; it was reached at the same hour.
    expect(ended.endMoistureWb).toBeLessThanOrEqual(0.1502);
    expect(ended.wettestWb).toBeLessThanOrEqual(0.1652);
    expect(ended.reachedHour).toBe(always.reachedHour);
  });
});
