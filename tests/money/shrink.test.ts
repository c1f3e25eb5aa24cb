import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatShrink, flatShrinkExcess } from '../../src/money/flat-shrink.ts';
import { waterAndHandlingShrink } from '../../src/money/handling-shrink.ts';
import { overdryingFraction, overdryingWeight } from '../../src/money/overdrying-weight.ts';
import { waterShrink, waterShrinkPerPoint } from '../../src/money/water-shrink.ts';

const SEEDED = { seed: 20240925, numRuns: 300 };
const wb = fc.double({ min: 0, max: 0.6, noNaN: true });
const falling = fc.tuple(wb, wb, wb).map((all) => all.sort((a, b) => b - a));

describe('shrink', () => {
  it('keeps the dry matter', () => {
    fc.assert(
      fc.property(falling, ([from, to]) => {
        expect((1 - waterShrink(from, to)) * (1 - to)).toBeCloseTo(1 - from, 12);
      }),
      SEEDED,
    );
  });
  it('in two steps leaves what one step leaves', () => {
    fc.assert(
      fc.property(falling, ([from, half, to]) => {
        const kept = (1 - waterShrink(from, half)) * (1 - waterShrink(half, to));
        expect(kept).toBeCloseTo(1 - waterShrink(from, to), 12);
      }),
      SEEDED,
    );
  });
  it('is points times the factor of the end, and handling comes on top', () => {
    fc.assert(
      fc.property(falling, ([from, to]) => {
        const water = (from - to) * 100 * waterShrinkPerPoint(to);
        expect(waterAndHandlingShrink(from, to, 0.005)).toBeCloseTo(water + 0.005, 12);
      }),
      SEEDED,
    );
  });
  it('flat at the water’s own factor takes the water and no more', () => {
    fc.assert(
      fc.property(falling, ([from, base]) => {
        const perPoint = waterShrinkPerPoint(base);
        expect(flatShrink(from, base, perPoint)).toBeCloseTo(waterShrink(from, base), 12);
        expect(flatShrinkExcess(from, base, perPoint, 4)).toBeCloseTo(0, 12);
      }),
      SEEDED,
    );
  });
  it('flat takes nothing at or below the base, and less than the water with a small factor', () => {
    expect(flatShrink(0.15, 0.15, 0.014)).toBe(0);
    expect(flatShrink(0.12, 0.15, 0.014)).toBe(0);
    expect(flatShrinkExcess(0.2, 0.15, 0.01, 4)).toBeLessThan(0);
  });
  it('over-drying is the water shrink seen from the other side, and nothing where the grain ended wetter', () => {
    fc.assert(
      fc.property(falling, ([base, end]) => {
        expect(overdryingFraction(base, end)).toBeCloseTo(waterShrink(base, end), 12);
        expect(overdryingFraction(end, base)).toBe(0);
        expect(overdryingWeight(850, base, end) * (1 - base)).toBeCloseTo(850 * overdryingFraction(base, end), 9);
      }),
      SEEDED,
    );
  });
  it.each([Number.NaN, -0.01, 0.61, 15, Number.POSITIVE_INFINITY])('throws on %d, with the range', (bad) => {
    const range = /must lie between 0 and 0/;
    expect(() => waterShrink(bad, 0.1)).toThrow(range);
    expect(() => waterShrink(0.2, bad)).toThrow(/toWb is .* between 0 and 0\.2/);
    expect(() => waterShrinkPerPoint(bad)).toThrow(range);
    expect(() => waterAndHandlingShrink(0.2, 0.15, bad)).toThrow(range);
    expect(() => flatShrink(bad, 0.15, 0.014)).toThrow(range);
    expect(() => flatShrink(0.2, bad, 0.014)).toThrow(range);
    expect(() => flatShrink(0.2, 0.15, bad)).toThrow(range);
    expect(() => overdryingFraction(bad, 0.1)).toThrow(range);
    expect(() => overdryingFraction(0.1, bad)).toThrow(range);
  });
  it('throws on water that would be added, on a shrink above the whole and on a price below nothing', () => {
    expect(() => waterShrink(0.15, 0.16)).toThrow(/toWb is 0\.16; it must lie between 0 and 0\.15/);
    expect(() => flatShrink(0.6, 0.1, 0.03)).toThrow(/flat shrink is 1\.5/);
    expect(() => flatShrinkExcess(0.2, 0.15, 0.014, -1)).toThrow(/pricePerBushel is -1/);
  });
});
