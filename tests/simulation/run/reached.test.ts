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

describe('the hour from which a target stays reached', () => {
  // Grain at 14 degC, to be at 4 degC: air of 2 degC for five days (4 degC after the fan), of 12 degC for five, of 2 degC again.
  const hours = inventedHours({ count: 480, tempC: (hour) => (hour >= 120 && hour < 240 ? 12 : 2), rh: () => 0.8 });
  const bin = inventedBin(hours, { goal: 'cool', targetWb: null, targetC: 4, moistureWb: 0.15 });

  it('is the first hour after the last in which it is not', () => {
    const { outcome, trace } = runSeason(bin, alwaysOn, {}, { trace: true });
    if (trace === null) throw new Error('no trace');
    const layers = bin.bed.layers;
    const isThere = (hour: number) => {
      const warmest = Math.max(...trace.layerC.subarray(hour * layers, (hour + 1) * layers));
      return Math.abs(trace.meanC[hour] - 4) <= 5 / 1.8 && warmest <= 4 + 10 / 1.8;
    };
    const lastNot =
      Array.from(trace.meanC.keys())
        .filter((hour) => !isThere(hour))
        .at(-1) ?? 0;
    // It was reached before, was lost, and came again.
    expect(isThere(119)).toBe(true);
    expect(lastNot).toBeGreaterThan(240);
    expect(outcome.reachedTarget).toBe(true);
    // The trace tells the end of an hour: reached with the end of `lastNot + 1` is reached from the hour after it on.
    expect(outcome.reachedHour).toBe(lastNot + 2);
  });

  it('is none where the target is lost at the end, and the first hour counted where it was there from the start', () => {
    const lost = runSeason({ ...bin, endHour: 200 }, alwaysOn).outcome;
    expect([lost.reachedTarget, lost.reachedHour]).toEqual([false, Number.NaN]);
    const rests = scheduled('as-logged', 'As logged', []);
    const dry = inventedBin(hours, { moistureWb: 0.151, fromHour: 24 });
    const there = runSeason(dry, rests).outcome;
    expect([there.reachedTarget, there.reachedHour]).toEqual([true, 24]);
    expect(runSeason({ ...dry, targetWb: 0.1489 }, rests).outcome.reachedTarget).toBe(false);
  });
});
