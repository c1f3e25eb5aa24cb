import { describe, expect, it } from 'vitest';
import { newView, seeGrain } from '../../../src/simulation/run/fill-view.ts';
import { playBin } from '../../../src/simulation/run/played-bin.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

/** Two columns of a quarter and three quarters of the floor, filled to one layer and a half of 2 m; dry basis. */
function twoColumns(air: 'up' | 'down'): RunSpec {
  const bin = inventedBin(inventedHours({ count: 24 }));
  return {
    ...bin,
    bed: { ...bin.bed, layers: 2, air, airShares: [1, 1], areaShares: [0.25, 0.75] },
    levels: [{ ...bin.levels[0], depthM: 3 }],
    start: { tempC: Float64Array.of(10, 20, 14, 8), moistureDb: Float64Array.of(0.2, 0.25, 0.18, 0.16) },
  };
}

describe('what the view shows of the grain', () => {
  it('weighs columns by their floor and layers by their dry matter', () => {
    const bin = playBin(twoColumns('up'));
    const view = newView(bin);
    seeGrain(view, bin);
    // Weights 0.25 x 2, 0.25 x 1, 0.75 x 2, 0.75 x 1 of 3.
    expect(view.grainC).toBeCloseTo((0.5 * 10 + 0.25 * 20 + 1.5 * 14 + 0.75 * 8) / 3, 12);
    const db = (0.5 * 0.2 + 0.25 * 0.25 + 1.5 * 0.18 + 0.75 * 0.16) / 3;
    expect(view.grainWb).toBeCloseTo(db / (1 + db), 12);
    expect([view.warmestC, view.wettestWb]).toEqual([20, 0.2]);
    const floorDb = 0.25 * 0.2 + 0.75 * 0.18;
    const topDb = 0.25 * 0.25 + 0.75 * 0.16;
    expect([view.entryC, view.exitC]).toEqual([13, 11]);
    expect(view.entryWb).toBeCloseTo(floorDb / (1 + floorDb), 12);
    expect(view.exitWb).toBeCloseTo(topDb / (1 + topDb), 12);
  });

  it('turns entry and exit round where air is drawn down', () => {
    const bin = playBin(twoColumns('down'));
    const view = newView(bin);
    seeGrain(view, bin);
    expect([view.entryC, view.exitC]).toEqual([11, 13]);
  });

  it('shows nothing of an empty bin, where no strategy is asked', () => {
    const spec = inventedBin(inventedHours({ count: 24 }));
    const [full] = spec.levels;
    const levels = [full, { ...full, hour: 12, depthM: 0 }];
    const { outcome } = runSeason({ ...spec, levels }, alwaysOn);
    expect(outcome.fanHours).toBe(12);
    const { endMoistureWb, wettestWb, endTempC, warmestC, lifeUsed, lossWorst } = outcome;
    for (const none of [endMoistureWb, wettestWb, endTempC, warmestC, lifeUsed, lossWorst]) expect(none).toBeNaN();
    expect(outcome.reachedTarget).toBe(false);
  });

  it('tells no storage life of a crop without a rule', () => {
    const { outcome } = runSeason(inventedBin(inventedHours({ count: 48 }), { crop: 'rice' }), alwaysOn);
    expect([outcome.lifeUsed, outcome.lossMean, outcome.lossWorst]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });
});
