import { beforeAll, describe, expect, test } from 'vitest';
import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import { reviewedSample } from '../support/sample.ts';
import { truthOf } from './read-sample.ts';

/**
 * Mean moisture of the thirds and of the core column at the end, percent: by areas of the columns and dry matter over the
 * generator's 64 layers (scripts/sample, `runFarm` of FARM_2024, columns as they stand after the last step), which shares no
 * code with the kit. truth.json carries single layers only, at 7, 51 and 93 % of the depth.
 */
const THIRDS: Readonly<Record<string, readonly [bottom: number, middle: number, top: number, core: number]>> = {
  B1: [14.47, 15.45, 18.57, 17.14],
  B2: [13.3, 12.98, 13.3, 13.84],
  B3: [14.76, 14.61, 14.86, 14.98],
  B4: [13.46, 12.28, 10.6, 11.46],
  B5: [12.7, 11.62, 11.81, 12.0],
  B6: [13.1, 12.2, 13.32, 13.32],
};

describe('layers, tickets and hand samples of the sample', () => {
  const truth = truthOf('sorrel-fork');
  let review: SeasonReview;
  beforeAll(async () => {
    review = await reviewedSample('sorrel-fork');
  }, 240_000);
  const found = (id: string): BinReview => review.bins.find((one) => one.bin.id === id)!;
  const holds = (interval: readonly [number, number] | null, value: number) =>
    interval !== null && interval[0] <= value && value <= interval[1];

  test('nine of ten thirds lie in their intervals, and none is a point off', () => {
    const told = Object.entries(THIRDS).flatMap(([id, thirds]) =>
      found(id).moisture.layers!.end.map((layer, i) => ({ layer, truth: thirds[i] })),
    );
    expect(told).toHaveLength(18);
    const within = told.filter(({ layer, truth }) => holds(layer.moisture.interval, truth / 100)).length;
    expect(within).toBeGreaterThanOrEqual(17);
    for (const { layer, truth } of told) expect(Math.abs(100 * layer.moisture.value! - truth)).toBeLessThan(1);
  });

  test('the wettest third is the right one where they surely differ', () => {
    for (const id of ['B1', 'B4', 'B6']) {
      const { layers } = found(id).moisture;
      const [bottom, middle, top] = THIRDS[id];
      const wettest = (['bottom', 'middle', 'top'] as const)[
        [bottom, middle, top].indexOf(Math.max(bottom, middle, top))
      ];
      expect(layers!.spread.interval![0], id).toBeGreaterThan(0.5);
      expect(layers!.unload.wettest!.name, id).toBe(wettest);
      const spread = Math.max(bottom, middle, top) - Math.min(bottom, middle, top);
      expect(holds(layers!.spread.interval, spread), id).toBe(true);
    }
  });

  test('the single layers of truth.json lie by their thirds', () => {
    // The layer at 7 % of the depth and the mean of the bottom third differ by what lies between: within 1.5 points where
    // no front stands there (B1 has one in the middle third, so its bottom and top are told).
    for (const { id, moisture } of truth.bins) {
      const mean = (pick: (column: (typeof moisture.endProfile)[number]) => number) =>
        moisture.endProfile.reduce((sum, column) => sum + column.share * pick(column), 0);
      const { end } = found(id).moisture.layers!;
      expect(Math.abs(100 * end[0].moisture.value! - mean((one) => one.bottomPct)), id).toBeLessThan(1.5);
      expect(Math.abs(100 * end[2].moisture.value! - mean((one) => one.topPct)), id).toBeLessThan(1.5);
    }
  });

  test('the core is told where a cable hangs in it, and withheld where none does', () => {
    for (const id of ['B1', 'B3'])
      expect(holds(found(id).moisture.layers!.unload.centre.interval, THIRDS[id][3] / 100), id).toBe(true);
    for (const id of ['B4', 'B5', 'B6']) expect(found(id).moisture.layers!.unload.centre.value, id).toBeNull();
  });

  test('sensors and tickets agree, whose errors are what season.yaml states', () => {
    for (const id of ['B1', 'B2', 'B3', 'B4', 'B5']) expect(found(id).moisture.tickets!.start!.agree, id).toBe(true);
    expect(found('B5').moisture.tickets!.end!.agree).toBe(true);
    expect(found('B6').moisture.tickets!.why).toContain('no scale tickets');
  });

  test('hand samples find the bias of the cables: it takes the end nearer to the truth, and their interval holds it', () => {
    const { moisture, probes } = found('B2');
    const { endPct } = truth.bins.find((one) => one.id === 'B2')!.moisture;
    // Samples of the generator are off by 0.2 point each and by no meter.
    expect(probes!.bin.pairs).toBeGreaterThanOrEqual(6);
    expect(holds(probes!.bin.offset.interval, 100 * moisture.end.value! - endPct)).toBe(true);
    expect(Math.abs(100 * probes!.corrected!.end.value! - endPct)).toBeLessThan(
      Math.abs(100 * moisture.end.value! - endPct),
    );
    expect(probes!.corrected!.pointsRemoved).toEqual(moisture.pointsRemoved);
    expect(found('B3').probes!.why).toContain('No hand samples');
  });

  test('stages of the bin filled in three steps: their balance holds what the loads brought less what is left', () => {
    const { stages, tickets } = found('B2').moisture;
    expect(stages!.stages.map((one) => one.depthM.toFixed(2))).toEqual(['2.13', '3.81', '5.33']);
    // Loads as weighed (17.6 %) less the true end: what all stages took out; meter and sampling of the tickets err by 0.6.
    const { endPct } = truth.bins.find((one) => one.id === 'B2')!.moisture;
    const byLoads = 100 * tickets!.start!.tickets.value! - endPct;
    const [low, high] = stages!.perFullBushel.interval!;
    expect(byLoads).toBeGreaterThan(low - 0.6);
    expect(byLoads).toBeLessThan(high + 0.6);
    for (const id of ['B1', 'B3', 'B4', 'B5', 'B6']) expect(found(id).moisture.stages, id).toBeNull();
  });
});
