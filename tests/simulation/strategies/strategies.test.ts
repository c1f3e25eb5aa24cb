import { describe, expect, it } from 'vitest';
import { sourceOf } from '../../../src/base/sources/sources.ts';
import { STRATEGY_IDS } from '../../../src/season/strategy-ids.ts';
import type { View } from '../../../src/simulation/run/view.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { STRATEGIES, strategyOf } from '../../../src/simulation/strategies/strategies.ts';
import { MEMORY, type Parameters } from '../../../src/simulation/strategies/strategy.ts';
import { usualParameters } from '../../../src/simulation/strategies/usual-parameters.ts';
import { viewOf } from './view-of.ts';

/** What a strategy does at a moment, by its usual parameters but for those given. */
function fan(id: string, view: Partial<View>, given: Parameters = {}, memory = new Float64Array(MEMORY)): number {
  const strategy = strategyOf(id);
  return strategy.fan(viewOf(view), usualParameters(strategy, given), memory);
}

describe('the strategies', () => {
  it('are those that can be run without a schedule, each with its words, source and parameters in range', () => {
    expect(STRATEGIES.map(({ id }) => id)).toEqual([
      'always-on',
      'daytime-hours',
      'night-hours',
      'humidity-limit',
      'temperature-difference',
      'equilibrium-window',
      'cheap-hours',
      'drying-then-cooling',
      'warmed-air',
    ]);
    for (const { sourceKey, ownRule, parameters } of STRATEGIES) {
      if (sourceKey !== null) expect(sourceOf(sourceKey).key).toBe(sourceKey);
      expect(sourceKey !== null && ownRule === true).toBe(false);
      for (const { usual, range } of parameters) {
        expect(usual).toBeGreaterThanOrEqual(range[0]);
        expect(usual).toBeLessThanOrEqual(range[1]);
      }
    }
    expect(() => strategyOf('alwayson')).toThrow(/no strategy "alwayson"; there are always-on, /);
  });

  it('are those that a bin may state in season.yaml', () => {
    expect(STRATEGY_IDS).toEqual(STRATEGIES.map(({ id }) => id));
  });

  it('always-on runs in fog and frost', () => {
    expect(fan('always-on', { outdoorRh: 1, plenumC: -20 })).toBe(1);
  });

  it('clocks run within their hours, across midnight too, and parts of an hour', () => {
    const ran = (id: string, given: Parameters = {}) =>
      Array.from({ length: 24 }, (_, localHour) => fan(id, { localHour }, given));
    const hours = (all: number[]) => all.flatMap((share, hour) => (share === 1 ? [hour] : []));
    expect(hours(ran('daytime-hours'))).toEqual([9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    expect(hours(ran('night-hours'))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 21, 22, 23]);
    expect(ran('daytime-hours', { from: 9.25, to: 9.75 })[9]).toBe(0.5);
    const across = ran('night-hours', { from: 22.5, to: 0.25 });
    expect([across[22], across[23], across[0], across[1]]).toEqual([0.5, 1, 0.25, 0]);
  });

  it('humidity-limit looks at the outdoor air', () => {
    expect(fan('humidity-limit', { outdoorRh: 0.69, plenumRh: 0.9 })).toBe(1);
    expect(fan('humidity-limit', { outdoorRh: 0.7, plenumRh: 0.3 })).toBe(0);
    expect(fan('humidity-limit', { outdoorRh: 0.7 }, { rh: 0.8 })).toBe(1);
  });

  it('temperature-difference runs air that is cooler than the warmest grain, but not frost', () => {
    expect(fan('temperature-difference', { plenumC: 9.9, warmestC: 15 })).toBe(1);
    expect(fan('temperature-difference', { plenumC: 10.1, warmestC: 15 })).toBe(0);
    expect(fan('temperature-difference', { plenumC: -10.5, warmestC: 15 })).toBe(0);
  });

  it('equilibrium-window keeps out air that would wet the grain and air that would dry it too far', () => {
    const at = (plenumEmcWb: number) => fan('equilibrium-window', { plenumEmcWb });
    // Target 15 %: from 12 to 15.5 %.
    expect([at(0.119), at(0.121), at(0.154), at(0.156)]).toEqual([0, 1, 1, 0]);
    // Without a target around the grain's own 17 %.
    expect(fan('equilibrium-window', { plenumEmcWb: 0.171, targetWb: Number.NaN })).toBe(1);
    expect(fan('equilibrium-window', { plenumEmcWb: 0.13, targetWb: Number.NaN })).toBe(0);
  });

  it('cheap-hours runs in the cheaper half between the day’s prices, and always where there is nothing to choose', () => {
    const at = (pricePerKwh: number, given = {}) => fan('cheap-hours', { pricePerKwh }, given);
    expect([at(0.08), at(0.12), at(0.13), at(0.16)]).toEqual([1, 1, 0, 0]);
    expect([at(0.08, { share: 0 }), at(0.09, { share: 0 })]).toEqual([1, 0]);
    expect(fan('cheap-hours', { pricePerKwh: 0.1, cheapestPerKwh: 0.1, dearestPerKwh: 0.1 })).toBe(1);
    const none = Number.NaN;
    expect(fan('cheap-hours', { pricePerKwh: none, cheapestPerKwh: none, dearestPerKwh: none })).toBe(1);
  });

  it('drying-then-cooling dries by humidity until mean and wettest layer are there, then cools and keeps to it', () => {
    const memory = new Float64Array(MEMORY);
    const at = (view: Partial<View>) => fan('drying-then-cooling', view, {}, memory);
    expect(at({ outdoorRh: 0.74, plenumC: 20 })).toBe(1);
    expect(at({ outdoorRh: 0.76, plenumC: 2 })).toBe(0);
    // Mean at the target, a layer still 2 points above it: goes on drying.
    expect(at({ outdoorRh: 0.74, plenumC: 20, grainWb: 0.15, wettestWb: 0.17 })).toBe(1);
    expect(at({ outdoorRh: 0.74, plenumC: 20, grainWb: 0.15, wettestWb: 0.16 })).toBe(0);
    const dry = { grainWb: 0.151, wettestWb: 0.164 };
    expect(at({ ...dry, outdoorRh: 0.9, plenumC: 9 })).toBe(1);
    expect(at({ ...dry, outdoorRh: 0.5, plenumC: 11 })).toBe(0);
    expect(at({ ...dry, plenumC: -4, grainC: 4, warmestC: 6 })).toBe(0);
    // Cool air whose balance lies above where a layer may rest (16.3 %) would wet what has been dried.
    expect(at({ ...dry, plenumC: 9, plenumEmcWb: 0.162 })).toBe(1);
    expect(at({ ...dry, plenumC: 9, plenumEmcWb: 0.164 })).toBe(0);
    // Too wet again by the contract: dried again, down to the target.
    expect(at({ outdoorRh: 0.74, plenumC: 20, grainWb: 0.1521, wettestWb: 0.16 })).toBe(1);
    expect(at({ outdoorRh: 0.74, plenumC: 20, grainWb: 0.1505, wettestWb: 0.16 })).toBe(1);
    expect(at({ outdoorRh: 0.74, plenumC: 20, grainWb: 0.15, wettestWb: 0.16 })).toBe(0);
    // At the target from the start, or to be cooled only: not dried.
    const slack = { grainWb: 0.1515, wettestWb: 0.1515, outdoorRh: 0.5, plenumC: 20 };
    expect(fan('drying-then-cooling', slack)).toBe(0);
    expect(fan('drying-then-cooling', { ...slack, grainWb: 0.16, goal: 'cool' })).toBe(0);
    expect(fan('drying-then-cooling', { plenumC: 9, plenumEmcWb: 0.19, goal: 'cool' })).toBe(1);
    // A bin without a target moisture is cooled from the start.
    expect(fan('drying-then-cooling', { outdoorRh: 0.5, plenumC: 11, targetWb: Number.NaN })).toBe(0);
    expect(fan('drying-then-cooling', { outdoorRh: 0.9, plenumC: 9, targetWb: Number.NaN })).toBe(1);
  });

  it('warmed-air burns while the plenum’s air would leave the grain too wet, and never without a target', () => {
    const strategy = strategyOf('warmed-air');
    const burns = (view: Partial<View>, given: Parameters = {}) =>
      strategy.heater?.(viewOf(view), usualParameters(strategy, given), new Float64Array(MEMORY));
    expect(fan('warmed-air', {})).toBe(1);
    expect([burns({ plenumEmcWb: 0.149 }), burns({ plenumEmcWb: 0.151 })]).toEqual([false, true]);
    expect(burns({ plenumEmcWb: 0.151 }, { above: 0.01 })).toBe(false);
    expect(burns({ plenumEmcWb: 0.2, targetWb: Number.NaN })).toBe(false);
  });

  it('as-logged runs as written down and rests after its end', () => {
    const logged = scheduled('as-logged', 'As logged', [0, 0.25, 1], [0, 0, 1]);
    const at = (hour: number) => logged.fan(viewOf({ hourOfRun: hour }), {}, new Float64Array(MEMORY));
    expect([at(0), at(1), at(2), at(3)]).toEqual([0, 0.25, 1, 0]);
    const burns = (hour: number) => logged.heater?.(viewOf({ hourOfRun: hour }), {}, new Float64Array(MEMORY));
    expect([burns(1), burns(2), burns(3)]).toEqual([false, true, false]);
    expect(scheduled('as-logged', 'As logged', []).heater).toBeUndefined();
  });
});
