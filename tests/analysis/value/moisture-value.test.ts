import { describe, expect, it } from 'vitest';
import { dryingElsewhere } from '../../../src/analysis/value/drying-elsewhere.ts';
import { moistureValue } from '../../../src/analysis/value/moisture-value.ts';
import { estimate } from '../../../src/base/estimate.ts';
import { differenceOf, productOf } from '../../../src/base/stats/joined.ts';
import type { Season } from '../../../src/season/season.ts';
import { exampleInput } from '../../report/example-review.ts';
import { CORN_BUSHEL_KG, thousandBushels } from './thousand-bushels.ts';

const CORN = { pricePerBushel: 4, baseMoistureWb: 0.15, shrinkPerPoint: 0.014, discountPerBushelPoint: 0.03 };

/** 1,000 bu of corn dried from 18 to 15 %, nothing in doubt but what is given. */
function made({ points = [3, 3] as [number, number], end = 0.15, bushels = [1000, 1000] as [number, number] } = {}) {
  const input = exampleInput();
  const one = input.review.bins[0];
  const review = {
    ...one,
    bin: { ...one.bin, goal: 'dry' as const, grain: { ...one.bin.grain, crop: 'corn' } },
    grain: { ...one.grain, ...thousandBushels(0.18), bushelsInterval: bushels },
    moisture: {
      ...one.moisture,
      start: { ...one.moisture.start, value: 0.18, interval: [0.18, 0.18] as [number, number] },
      end: { ...one.moisture.end, value: end },
      pointsRemoved: estimate((0.18 - end) * 100, ...points),
    },
  };
  return { review, season: { ...input.loaded.season, prices: { corn: CORN } } };
}

describe('what a change of moisture was worth', () => {
  // By hand. Wet: 3 points over base, 1.4 % shrink a point: 958 paid bushels at 4 = 3832, less 3 x 0.03 x 1000 = 90: 3742.
  // Dry: 1000 x 0.82 / 0.85 = 964.7059 bushels at 4, nothing taken off: 3858.82. Gained 116.82.
  it('is the lot sold as it came out less the lot sold as it went in', () => {
    const { review, season } = made();
    const { asIn, asOut, gained } = moistureValue(review, season);
    expect(asIn.value).toBeCloseTo(3742, 6);
    expect(asOut.value).toBeCloseTo(3858.8235, 3);
    expect(gained.value).toBeCloseTo(116.8235, 3);
    expect(gained.interval?.[0]).toBeCloseTo(116.8235, 3);
  });

  it('loses the weight of the water below the base: the interval follows the points', () => {
    // 14 %: 1000 x 0.82 / 0.86 = 953.4884 bushels at 4 = 3813.95, 44.87 under the lot at 15 %.
    const { review, season } = made({ points: [3, 4] });
    const { gained } = moistureValue(review, season);
    expect(gained.interval?.[0]).toBeCloseTo(3813.9535 - 3742, 3);
    expect(gained.interval?.[1]).toBeCloseTo(116.8235, 3);
  });

  it('is of the dry matter: grain weighed in wetter than it lay when the bin was full has lost that water before', () => {
    // By hand: 1,020 bu over the scale at 19.6 % hold 1020 x 0.804 = 820.08 bu of dry matter, 1000.0976 at 18 %: sold as it went in
    // 3742 x 1.0000976 = 3742.37, as it came out at 15 % 820.08 / 0.85 x 4 = 3859.20.
    const { review, season } = made();
    const dryMatterKg = 820.08 * CORN_BUSHEL_KG;
    const ends = (kg: number) => [0.99 * kg, 1.01 * kg] as [number, number];
    const weighed = {
      ...{ from: 'tickets' as const, bushels: 1020, bushelsInterval: [1010, 1030] as [number, number] },
      ...{ dryMatterKg, dryMatterKgInterval: ends(dryMatterKg) },
    };
    const { asIn, asOut } = moistureValue({ ...review, grain: { ...review.grain, ...weighed } }, season);
    expect(asIn.value).toBeCloseTo(3742 * 1.0000976, 2);
    expect(asOut.value).toBeCloseTo(3859.2, 2);
    expect(asOut.interval?.[0]).toBeCloseTo(0.99 * 3859.2, 1);
    const unknown = { ...review.grain, ...weighed, dryMatterKg: null, why: null };
    expect(moistureValue({ ...review, grain: unknown }, season).asIn.why).toMatch(/^The dry matter in .* is not known/);
  });

  it('is withheld without a price, and without a base', () => {
    const { review, season } = made();
    expect(moistureValue(review, { ...season, prices: {} }).gained.why).toBe('No price of corn is stated.');
    const beans = { ...review, bin: { ...review.bin, grain: { ...review.bin.grain, crop: 'soybean' } } };
    expect(moistureValue(beans, { ...season, prices: {} }).gained.why).toBe('No price of soybeans is stated.');
    const bare = { ...season, prices: { corn: { ...CORN, baseMoistureWb: null } } };
    expect(moistureValue(review, bare).gained.why).toMatch(/^No base moisture/);
  });
});

describe('the same points elsewhere', () => {
  it('cost the stated fee for each bushel and point, and fuel and current for a dryer of one’s own', () => {
    const { review, season } = made({ points: [2.7, 3.3], bushels: [960, 1040] });
    const stated: Season = {
      ...season,
      dryingAlternative: {
        commercialPerPoint: { amount: 0.05, of: 'bushel' },
        // 1.75 a gallon, 0.02 gal and no current: 0.035 a bushel-point
        highTemperature: {
          fuelPricePerM3: 1.75,
          fuelM3PerPoint: { amount: 0.02, of: 'bushel' },
          electricityKwhPerPoint: null,
        },
      },
    };
    const { commercial, highTemperature } = dryingElsewhere(review, stated);
    expect(commercial.value).toBeCloseTo(150, 9);
    // 10 % of the points and 4 % of the bushels, as squares
    expect(commercial.interval?.[1]).toBeCloseTo(150 * (1 + Math.hypot(0.1, 0.04)), 9);
    expect(highTemperature.value).toBeCloseTo(105, 9);
    expect(dryingElsewhere(review, season).commercial.why).toMatch(/drying_alternative/);
  });

  it('cost the same where the fee is by the tonne: corn’s legal bushel is 56 lb', () => {
    const { review, season } = made({ points: [2.7, 3.3], bushels: [960, 1040] });
    const of = (amount: number) => ({ amount: amount / (56 * 0.45359237), of: 'kg' }) as const;
    const highTemperature = { fuelPricePerM3: 1.75, fuelM3PerPoint: of(0.02), electricityKwhPerPoint: null };
    const dryingAlternative = { commercialPerPoint: of(0.05), highTemperature };
    const told = dryingElsewhere(review, { ...season, dryingAlternative });
    expect(told.commercial.value).toBeCloseTo(150, 9);
    expect(told.highTemperature.value).toBeCloseTo(105, 9);
  });
});

describe('independent numbers joined', () => {
  // GUM, JCGM 100:2008, 5.1.2: squares add.
  it('add their errors as squares, each side by its own', () => {
    expect(differenceOf(estimate(10, 7, 11), estimate(4, 0, 7))).toEqual(
      estimate(6, 6 - Math.hypot(3, 3), 6 + Math.hypot(1, 4)),
    );
    expect(productOf(estimate(10, 7, 13), estimate(2, 1.2, 2.8)).interval).toEqual([
      20 - Math.hypot(6, 8),
      20 + Math.hypot(6, 8),
    ]);
  });
});
