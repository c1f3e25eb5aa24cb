import { describe, expect, it } from 'vitest';
import { reached } from '../../../src/simulation/run/reached.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

const grain = { grainWb: 0.15, wettestWb: 0.15, grainC: 10, warmestC: 10 };

// The season contract's words: mean no more than 0.2 point on the wrong side, wettest layer no more than 1.5 points above;
// for cool mean within 5 degF (2.78 K) of the target and no layer more than 10 degF (5.56 K) above.
describe('reached', () => {
  it.each([
    ['dry', { grainWb: 0.1519, wettestWb: 0.1649 }, true],
    ['dry', { grainWb: 0.1521, wettestWb: 0.1649 }, false],
    ['dry', { grainWb: 0.1519, wettestWb: 0.1651 }, false],
    ['dry', { grainWb: 0.11, wettestWb: 0.12 }, true],
    ['condition', { grainWb: 0.1481, wettestWb: 0.1649 }, true],
    ['condition', { grainWb: 0.1479, wettestWb: 0.1649 }, false],
    ['condition', { grainWb: 0.155, wettestWb: 0.1651 }, false],
    ['cool', { grainC: 6.7, warmestC: 9.5 }, true],
    ['cool', { grainC: 6.8, warmestC: 9.5 }, false],
    ['cool', { grainC: 6.7, warmestC: 9.6 }, false],
    ['cool', { grainC: 1.3, warmestC: 3 }, true],
    ['cool', { grainC: 1.2, warmestC: 3 }, false],
    ['hold', {}, false],
  ] as const)('%s %o: %s', (goal, at, expected) => {
    expect(reached(goal, 0.15, 4, { ...grain, ...at })).toBe(expected);
  });

  it('never without a target', () => {
    for (const goal of ['dry', 'condition', 'cool'] as const) expect(reached(goal, null, null, grain)).toBe(false);
  });
});

describe('the hour from which a bin counts as reached', () => {
  // Grain at 14 degC, to be at 4 degC: air of 2 degC for five days (4 degC after the fan), of 12 degC for five, of 2 degC again.
  const hours = inventedHours({ count: 480, tempC: (hour) => (hour >= 120 && hour < 240 ? 12 : 2), rh: () => 0.8 });
  const bin = inventedBin(hours, { goal: 'cool', targetWb: null, targetC: 4, moistureWb: 0.15 });

  it('is, for cooling, the first hour in which it is there: warmth that comes later takes nothing back', () => {
    const { outcome, trace } = runSeason(bin, alwaysOn, {}, { trace: true });
    if (trace === null) throw new Error('no trace');
    const layers = bin.bed.layers;
    const isThere = (hour: number) => {
      const warmest = Math.max(...trace.layerC.subarray(hour * layers, (hour + 1) * layers));
      return Math.abs(trace.meanC[hour] - 4) <= 5 / 1.8 && warmest <= 4 + 10 / 1.8;
    };
    const first = Array.from(trace.meanC.keys()).find(isThere) ?? Number.NaN;
    // It is lost in between.
    expect(first).toBeLessThan(119);
    expect(isThere(200)).toBe(false);
    expect(outcome.reachedTarget).toBe(true);
    // The trace tells the end of an hour: there with the end of `first` is there from the hour after it on.
    expect(outcome.reachedHour).toBe(first + 1);
    expect(runSeason({ ...bin, endHour: 200 }, alwaysOn).outcome.reachedTarget).toBe(true);
  });

  it('is, for drying, none where the target is lost at the end', () => {
    // Ten days of dry air, then ten of damp, into grain a little over its target.
    const spells = inventedHours({ count: 480, tempC: () => 12, rh: (hour) => (hour < 240 ? 0.5 : 0.9) });
    const grain = inventedBin(spells, { moistureWb: 0.156 });
    const { outcome, trace } = runSeason({ ...grain, targetWb: 0.15 }, alwaysOn, {}, { trace: true });
    const driest = Math.min(...(trace?.meanWb ?? []));
    expect(driest).toBeLessThan(0.15);
    expect(outcome.endMoistureWb).toBeGreaterThan(0.152);
    expect([outcome.reachedTarget, outcome.reachedHour]).toEqual([false, Number.NaN]);
  });

  it('is the first hour counted where it was there from the start', () => {
    const rests = scheduled('as-logged', 'As logged', []);
    const dry = inventedBin(hours, { moistureWb: 0.151, fromHour: 24 });
    const there = runSeason(dry, rests).outcome;
    expect([there.reachedTarget, there.reachedHour]).toEqual([true, 24]);
    expect(runSeason({ ...dry, targetWb: 0.1489 }, rests).outcome.reachedTarget).toBe(false);
  });
});
