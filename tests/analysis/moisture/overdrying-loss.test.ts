import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { overdryingLoss } from '../../../src/analysis/moisture/overdrying-loss.ts';
import { HOUR, makeBin, makeSeason, T0 } from './make-bin.ts';
import { CENTRE, input, RING } from './two-cables.ts';

describe('over-drying loss', () => {
  const priced = (baseMoistureWb: number | null) =>
    makeSeason({
      prices: { corn: { pricePerBushel: 4, baseMoistureWb, shrinkPerPoint: null, discountPerBushelPoint: null } },
    });

  // Volume pi/4 100 * 6 = 471.2389 m3, 720 kg/m3: 339292.0 kg, dry matter 0.82 of it = 278219.4 kg.
  // At 15.5 %: 329253.8 kg; at 15.32442 %: 328571.1 kg; 682.7 kg lost, 26.88 bushels of 25.40117 kg, 107.5 at 4.
  it('by hand', () => {
    const told = binMoisture(input({ season: priced(0.155) }));
    expect(told.overdryingLossBushels.value).toBeCloseTo(26.88, 1);
    expect(told.overdryingLoss.value).toBeCloseTo(107.5, 0);
    const [low, high] = told.overdryingLossBushels.interval!;
    expect(low).toBe(0); // a shared bias of the cables does not cancel here
    expect(high).toBeGreaterThan(26.88);
  });

  // The weight that the dry matter would have at the base, less that at the end, in the crop's own legal bushels. Dry matter
  // 100 t in each, ended at 12 %: 113,636.4 kg. Soybeans, base 13 %: 114,942.5 kg, 1,306.2 kg, 47.99 bushels of 60 lb (27.21554 kg),
  // 508.7 at 10.60. Wheat, base 13.5 %: 115,606.9 kg, 1,970.6 kg, 72.41 bushels, 405.5 at 5.60. Barley, base 14.5 %: 116,959.1 kg,
  // 3,322.7 kg, 152.61 bushels of 48 lb (21.77243 kg), 686.7 at 4.50.
  it.each([
    ['soybean', 0.13, 10.6, 47.99, 508.7],
    ['wheat', 0.135, 5.6, 72.41, 405.5],
    ['barley', 0.145, 4.5, 152.61, 686.7],
  ])('%s by hand, whatever the fans were run for', (crop, base, price, bushels, money) => {
    const season = makeSeason({
      prices: {
        [crop]: { pricePerBushel: price, baseMoistureWb: base, shrinkPerPoint: null, discountPerBushelPoint: null },
      },
    });
    const grain = { dryMatterKg: 100_000, dryMatterKgInterval: [99_000, 101_000] as [number, number], why: null };
    const mean = { value: 0.12, window: null, stillAir: true, readings: 1, sensors: 1, fanOn: null };
    for (const goal of ['dry', 'cool', 'condition', 'hold'] as const) {
      const told = overdryingLoss(makeBin([], { crop }, { goal }), season, grain, { mean, parts: [], why: null });
      expect(Math.abs(told.bushels.value! - bushels)).toBeLessThan(0.005);
      expect(Math.abs(told.money.value! - money)).toBeLessThan(0.05);
      // The end is taken as exact here: one percent of dry matter is one percent of the loss.
      expect(told.bushels.interval![1] / told.bushels.value!).toBeCloseTo(1.01, 9);
    }
  });

  it('takes the target where the price states no base, and the dry matter of the tickets where they cover the filling', () => {
    const bin = makeBin([CENTRE, RING], { targetMoistureWb: 0.16 });
    // 346,080 kg over the scale at 19 %: 280,324.8 kg dry; at 16 % 333,720.0, at 15.32442 % 331,057.6: 2,662.4 kg, 104.81 bushels.
    const tickets = Array.from({ length: 14 }, (_, i) => ({
      timeMs: T0 - i * HOUR,
      direction: 'in' as const,
      netKg: 24_720,
      moistureWb: 0.19,
    }));
    const told = binMoisture(input({ bin, season: priced(null), tickets }));
    expect(told.overdryingLossBushels.value).toBeCloseTo(104.81, 1);
    expect(told.overdryingLoss.value).toBeCloseTo(4 * 104.81, 0);
  });

  it('is none where the grain ended wetter', () => {
    const told = binMoisture(input({ season: priced(0.13) }));
    expect(told.overdryingLossBushels.value).toBe(0);
    expect(told.overdryingLossBushels.interval).toEqual([0, 0]);
  });

  it('needs a base or target, and a price for the money', () => {
    const bin = makeBin([CENTRE, RING], { targetMoistureWb: null });
    expect(binMoisture(input({ bin })).overdryingLoss.why).toContain('Neither a base moisture');
    const told = binMoisture(input());
    expect(told.overdryingLossBushels.value).toBe(0);
    expect(told.overdryingLoss.why).toContain('No price of corn');
  });
});
