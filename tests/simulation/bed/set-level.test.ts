import { describe, expect, it } from 'vitest';
import { ACCOUNT, newBed } from '../../../src/simulation/bed/bed.ts';
import { bedHolds, bedImbalance } from '../../../src/simulation/bed/bed-totals.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import { setState } from '../../../src/simulation/bed/set-state.ts';
import { SEA_PA } from './filled-bed.ts';

const medium = mediumOf('corn', 600);
const empty = (columns = 1) =>
  newBed({ medium, depthM: 4, layers: 4, pressurePa: SEA_PA, airShares: new Array(columns).fill(1) });

describe('setLevel', () => {
  it('fills 2.5 of 4 m: two whole layers, one of half, none above', () => {
    const bed = empty();
    setLevel(bed, 2.5, 12, 0.2);
    expect(bed.filled).toBe(3);
    expect([...bed.dryKgM2]).toEqual([600, 600, 300, 0]);
    expect([...bed.moistureDb.slice(0, 3)]).toEqual([0.2, 0.2, 0.2]);
    for (const t of bed.tempC.slice(0, 3)) expect(t).toBeCloseTo(12, 12);
    expect(bedHolds(bed)).toMatchObject({ dryKgM2: 1500, waterKgM2: expect.closeTo(300, 9) });
    expect(bed.account[ACCOUNT.waterByGrain]).toBeCloseTo(300, 9);
  });

  it('mixes what comes to a half full layer by mass, its water and its heat kept, the age of what lay there shared', () => {
    const bed = empty(2);
    setLevel(bed, 2.5, 10, 0.16);
    bed.lifeUsed.fill(0.4);
    setLevel(bed, 3.2, 30, 0.28);
    expect(bed.filled).toBe(4);
    for (const first of [0, 4]) {
      // Half and half in the third layer, only what came in the fourth.
      expect(bed.moistureDb[first + 2]).toBeCloseTo(0.22, 12);
      expect(bed.moistureDb[first + 3]).toBe(0.28);
      expect(bed.lifeUsed[first + 1]).toBe(0.4);
      expect(bed.lifeUsed[first + 2]).toBeCloseTo(0.2, 12);
      expect(bed.lifeUsed[first + 3]).toBe(0);
      // By heat of grain alone (1 + M) c: (c1 10 + c2 30) / (c1 + c2), and a little for the heat that water gives when it is bound more tightly.
      const heat = (m: number) => medium.heatDryJKgK + medium.heatPerMoistureJKgK * m;
      const mixed = (heat(0.16) * 10 + heat(0.28) * 30) / (heat(0.16) + heat(0.28));
      expect(bed.tempC[first + 2]).toBeGreaterThan(mixed);
      expect(bed.tempC[first + 2]).toBeLessThan(mixed + 3);
    }
    const { water, heat } = bedImbalance(bed);
    expect(Math.abs(water)).toBeLessThan(1e-14);
    expect(Math.abs(heat)).toBeLessThan(1e-14);
  });

  it('draws from the surface and leaves the rest where it lay', () => {
    const bed = empty();
    setLevel(bed, 4, 10, 0.16);
    bed.moistureDb.set([0.1, 0.2, 0.3, 0.4]);
    bed.tempC.set([1, 2, 3, 4]);
    const held = bedHolds(bed).waterKgM2;
    setLevel(bed, 1.25, Number.NaN, Number.NaN);
    expect(bed.filled).toBe(2);
    expect([...bed.dryKgM2]).toEqual([600, 150, 0, 0]);
    expect([...bed.tempC.slice(0, 2)]).toEqual([1, 2]);
    expect(bedHolds(bed).waterKgM2).toBeCloseTo(held - 450 * 0.2 - 600 * 0.3 - 600 * 0.4, 9);
    setLevel(bed, 0, Number.NaN, Number.NaN);
    expect(bed.filled).toBe(0);
    expect(bedHolds(bed)).toEqual({ dryKgM2: 0, waterKgM2: 0, heatJM2: 0 });
  });

  it('fills an emptied bed without a trace of what was in it', () => {
    const bed = empty();
    setLevel(bed, 4, 35, 0.4);
    bed.lifeUsed.fill(0.9);
    setLevel(bed, 0, 0, 0);
    setLevel(bed, 2, 5, 0.15);
    expect([...bed.moistureDb.slice(0, 2)]).toEqual([0.15, 0.15]);
    expect(bed.tempC[1]).toBeCloseTo(5, 12);
    expect([...bed.lifeUsed.slice(0, 2)]).toEqual([0, 0]);
  });

  it('refuses a level that the bed does not reach', () => {
    expect(() => setLevel(empty(), 4.1, 10, 0.2)).toThrow(/depthM/);
    expect(() => setLevel(empty(), -0.1, 10, 0.2)).toThrow(/depthM/);
    expect(() => setLevel(empty(), Number.NaN, 10, 0.2)).toThrow(/depthM/);
  });
});

describe('setState', () => {
  it('puts the grain at other states and keeps the books closed', () => {
    const bed = empty(2);
    setLevel(bed, 2.5, 10, 0.16);
    setState(
      bed,
      new Float64Array(8).fill(22),
      Float64Array.from({ length: 8 }, (_, i) => 0.14 + 0.01 * i),
    );
    // By hand: 600 kg/m2 twice and 300, half of the floor each column.
    const water = 0.5 * (600 * (0.14 + 0.15) + 300 * 0.16) + 0.5 * (600 * (0.18 + 0.19) + 300 * 0.2);
    expect(bedHolds(bed).waterKgM2).toBeCloseTo(water, 9);
    expect(bed.tempC[1]).toBe(22);
    expect(Math.abs(bedImbalance(bed).water)).toBeLessThan(1e-14);
    expect(Math.abs(bedImbalance(bed).heat)).toBeLessThan(1e-14);
  });

  it('refuses a state of another size', () => {
    expect(() => setState(empty(), new Float64Array(3), new Float64Array(4))).toThrow(/tempC has 3 numbers/);
  });
});
