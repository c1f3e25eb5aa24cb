import { describe, expect, it } from 'vitest';
import { fillTimes } from '../../../src/analysis/grain/fill-times.ts';
import { grainAmount } from '../../../src/analysis/grain/grain-amount.ts';
import { BUSHEL_M3 } from '../../../src/base/bushel.ts';
import { makeBin } from '../moisture/make-bin.ts';

const FT = 0.3048;

describe('grainAmount', () => {
  // Handbook capacity of a round bin: 0.628 d^2 h bushels of 1.2445 ft3 (pi/4/1.2445 = 0.6311, from memory usually rounded to 0.63):
  // 36 ft by 20 ft: 20357.5 ft3, 16358 bushels by volume; at the legal 56 lb each 916,050 lb, so the same number by weight.
  it('a 36 ft bin, 20 ft deep, of 56 lb corn holds 16,358 bushels both ways', () => {
    const bin = makeBin(
      [],
      {
        depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 20 * FT }],
        bulkDensityKgM3: (56 * 0.45359237) / BUSHEL_M3,
      },
      { diameterM: 36 * FT },
    );
    const amount = grainAmount(bin, { value: 0.18, interval: [0.175, 0.185] });
    expect(amount.volumeBushels).toBeCloseTo(16358, -1);
    expect(amount.bushels).toBeCloseTo(amount.volumeBushels!, 6);
    expect(amount.weightKg! / 0.45359237).toBeCloseTo(916_050, -3);
    expect(amount.dryMatterKg).toBeCloseTo(0.82 * amount.weightKg!, 6);
    expect(amount.why).toBeNull();
    expect(amount.from).toBe('volume');
    // By hand: below 1.645 x 2 % = 3.29 %; above that and 5 % of packing as squares, 5.985 %.
    expect(amount.bushelsInterval![0] / amount.bushels!).toBeCloseTo(1 - 0.0329, 4);
    expect(amount.bushelsInterval![1] / amount.bushels!).toBeCloseTo(1 + 0.05985, 4);
    // Dry matter: half a point of water in 82 of 100 is 0.61 %; with 3.29 % as squares 3.346 %.
    expect(amount.dryMatterKgInterval![0] / amount.dryMatterKg!).toBeCloseTo(1 - 0.03346, 4);
  });

  // 58 lb test weight: 58/56 bushels of money to one of volume.
  it('heavier corn makes more legal bushels of the same volume', () => {
    const amount = grainAmount(makeBin([], { bulkDensityKgM3: (58 * 0.45359237) / BUSHEL_M3 }), null);
    expect(amount.bushels! / amount.volumeBushels!).toBeCloseTo(58 / 56, 9);
    expect(amount.dryMatterKg).toBeNull();
    expect(amount.dryMatterKgInterval).toBeNull();
    expect(amount.why).toContain('moisture at filling');
  });

  it('no depth, no amount', () => {
    const amount = grainAmount(makeBin([], { depthSteps: [] }), { value: 0.18, interval: null });
    expect(amount).toMatchObject({ volumeM3: null, bushels: null, depthM: null });
    expect(amount.why).toContain('No depth');
  });
});

describe('fillTimes', () => {
  const at = (fromMs: number, depthM: number) => ({ fromMs, depthM });

  it('filled in steps, settled, partly taken out, unloaded', () => {
    const steps = [at(100, 2), at(200, 5), at(300, 6), at(400, 5.8), at(900, 3), at(1000, 0)];
    const told = fillTimes(makeBin([], { depthSteps: steps, filledMs: 100, unloadedMs: 1000 }));
    expect(told.depthM).toBe(6);
    expect(told.filledMs).toBe(300); // 5 of 6 is less than nine tenths
    expect(told.wholeUntilMs).toBe(900); // settling by 0.2 is no unloading
    expect(told.notes).toHaveLength(2);
    expect([told.begunMs, told.fullMs]).toEqual([100, 300]); // first grain, deepest step
  });

  it('a single depth, `filled` and `unloaded` as stated', () => {
    const told = fillTimes(makeBin([], { filledMs: 100, unloadedMs: null }));
    expect(told).toEqual({ depthM: 6, filledMs: 100, begunMs: 100, fullMs: 100, wholeUntilMs: null, notes: [] });
  });
});
