import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadSettlement } from '../../src/money/load-settlement.ts';
import { POSTED } from './posted-schedules.ts';

describe('a load settled', () => {
  // Iowa State University, reposted by Ohio State University Extension, Allen County: 20.5 % corn at $3.50, 2 % of the price
  // a point over 15 %: the page nets 3.11 from the rounded 0.39; unrounded 3.115.
  it('wet corn of an extension page nets $3.115 a bushel', () => {
    const ofPrice = {
      ...POSTED.cornOnWet,
      bands: [{ toWb: Number.POSITIVE_INFINITY, rate: 0.02 }],
      unit: 'price',
    } as const;
    expect(loadSettlement(1, 0.205, 3.5, [ofPrice])!.net).toBeCloseTo(3.115, 9);
  });
  // By hand: 1000 bu at 20 % and $4; shrink 10 halves x 0.7 % = 7 %, 930 bu paid, $3720; drying 5 x 5 c = 25 c.
  it('shrink first, then charges on wet or on paid bushels, by hand', () => {
    const dry = { ...POSTED.cornByPoint, bushels: 'dry' } as const;
    const wet = loadSettlement(1000, 0.2, 4, [POSTED.cornShrink, POSTED.cornByPoint])!;
    expect(wet.shrink).toBeCloseTo(0.07, 12);
    expect(wet.paidBushels).toBeCloseTo(930, 9);
    expect(wet.gross).toBeCloseTo(3720, 9);
    expect(wet.charges[0]).toBe(0);
    expect(wet.charges[1]).toBeCloseTo(250, 9);
    expect(wet.net).toBeCloseTo(3470, 9);
    expect(loadSettlement(1000, 0.2, 4, [POSTED.cornShrink, dry])!.charges[1]).toBeCloseTo(232.5, 9);
    expect(loadSettlement(1000, 0.2, 4, [], 0.07)!.net).toBeCloseTo(3720, 9);
  });
  it('is null where the load is not taken', () => {
    expect(loadSettlement(500, 0.18, 10, [POSTED.soybeanOfPrice])).toBeNull();
  });
  it('scales with the bushels', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.45, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (moistureWb, bushels) => {
          const schedules = [POSTED.cornShrink, POSTED.cornByHalves];
          const one = loadSettlement(1, moistureWb, 4.5, schedules)!;
          const many = loadSettlement(bushels, moistureWb, 4.5, schedules)!;
          expect(many.net / bushels).toBeCloseTo(one.net, 9);
        },
      ),
      { seed: 20240924, numRuns: 300 },
    );
  });
  it('throws where it cannot be told', () => {
    expect(() => loadSettlement(Number.NaN, 0.2, 4, [])).toThrow(/wetBushels is NaN/);
    expect(() => loadSettlement(1, 0.2, -4, [])).toThrow(/pricePerBushel is -4/);
    expect(() => loadSettlement(1, 0.2, 4, [], Number.NaN)).toThrow(/otherShrink is NaN/);
    expect(() => loadSettlement(1, 0.2, 4, [POSTED.cornShrink], 0.99)).toThrow(/shrink is 1\.06/);
  });
});
