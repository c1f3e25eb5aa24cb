import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../../src/analysis/types.ts';
import { wayWeights } from '../../../src/analysis/what-if/way-weights.ts';
import type { Season } from '../../../src/season/season.ts';

/** Of corn at 56 lb to the bushel: 10,000 legal bushels' weight of dry matter. */
const DRY_KG = 10_000 * 56 * 0.45359237;
const REVIEW = {
  bin: { goal: 'dry', grain: { crop: 'corn', targetMoistureWb: 0.15 } },
  grain: { dryMatterKg: DRY_KG },
} as unknown as BinReview;
const SEASON = { prices: { corn: { pricePerBushel: 4, baseMoistureWb: 0.15 } } } as unknown as Season;

const way = (id: string, ...runs: [cost: number, endMoistureWb: number, reached?: boolean][]) => ({
  id,
  tried: runs.map(([cost, endMoistureWb, reached = true]) => ({ cost, reached, endMoistureWb })),
});
const LOGGED = way('as-logged', [300, 0.15], [300, 0.14]);

describe('ways with over-drying counted', () => {
  // University of Nebraska-Lincoln, CropWatch, 14 September 2017, the rule 1 - (100 - base) / (100 - end): of the weight at 15 %,
  // 2 points below cost 1 - 85 / 87 = 2.30 %. By hand: 10,000 / 0.85 bushels at 4 dollars.
  it('cost what the grain weighs less than at the base, at the price', () => {
    const told = wayWeights(SEASON, REVIEW, LOGGED, [way('always-on', [200, 0.13], [250, 0.12])])!;
    const [, one] = told.ways;
    const worth = (10_000 / 0.85) * 4;
    expect(one.givenAway.value).toBeCloseTo(worth * (1 - 85 / 87), 6);
    expect(one.givenAway.interval![1]).toBeCloseTo(worth * (1 - 85 / 88), 6);
    expect(one.together.value).toBeCloseTo(200 + worth * (1 - 85 / 87), 6);
    expect(told.ways[0].givenAway.value).toBe(0);
    // Run by run: 12 % beside 14 % in the second, whose season as run lost 1 - 85 / 86 of its weight too.
    expect(one.beyondLogged.value).toBeCloseTo(200 + worth * (1 - 85 / 87), 6);
    expect(one.beyondLogged.interval![1]).toBeCloseTo(250 + worth * (85 / 86 - 85 / 88), 6);
  });

  it('name the rule that comes cheapest with it, of those that reach', () => {
    const cheap = way('always-on', [200, 0.13], [210, 0.13]);
    const even = way('humidity-limit', [400, 0.149], [420, 0.149]);
    const wet = way('night-hours', [50, 0.17, false], [50, 0.17, false]);
    expect(wayWeights(SEASON, REVIEW, LOGGED, [cheap, even, wet])).toMatchObject({
      belowWb: 0.15,
      pick: 'humidity-limit',
      clear: true,
    });
  });

  it('leave it open where each is the cheapest in some of the runs', () => {
    const ways = [way('always-on', [500, 0.15], [800, 0.15]), way('humidity-limit', [700, 0.15], [600, 0.15])];
    expect(wayWeights(SEASON, REVIEW, LOGGED, ways)).toMatchObject({ clear: false });
  });

  it('count from the target where that is below the base: grain to be stored long is not over-dried at it', () => {
    const review = { ...REVIEW, bin: { ...REVIEW.bin, grain: { ...REVIEW.bin.grain, targetMoistureWb: 0.13 } } };
    const told = wayWeights(SEASON, review, LOGGED, [way('always-on', [200, 0.13])])!;
    expect([told.belowWb, told.ways[1].givenAway.value]).toEqual([0.13, 0]);
    // Nor is grain that was to stay above it.
    const above = { ...REVIEW, bin: { ...REVIEW.bin, grain: { ...REVIEW.bin.grain, targetMoistureWb: 0.16 } } };
    expect(wayWeights(SEASON, above, LOGGED, [])!.belowWb).toBe(0.15);
  });

  it('tell no sum where the energy has no price, and nothing where the grain has none, or was not to be dried', () => {
    const told = wayWeights(SEASON, REVIEW, LOGGED, [way('always-on', [Number.NaN, 0.13])])!;
    expect(told.pick).toBeNull();
    expect(told.ways[1].together.value).toBeNull();
    expect(told.ways[1].givenAway.value).toBeGreaterThan(0);
    expect(wayWeights({ prices: {} } as unknown as Season, REVIEW, LOGGED, [])).toBeNull();
    const free = { prices: { corn: { pricePerBushel: 0, baseMoistureWb: 0.15 } } } as unknown as Season;
    expect(wayWeights(free, REVIEW, LOGGED, [])).toBeNull();
    expect(wayWeights(SEASON, { ...REVIEW, bin: { ...REVIEW.bin, goal: 'cool' } }, LOGGED, [])).toBeNull();
  });
});
