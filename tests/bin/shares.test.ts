import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cable } from '../../src/bin/cable.ts';
import { sensorShares } from '../../src/bin/shares.ts';

const cable = (id: string, fromCentreM: number, ...sensorHeightsM: number[]): Cable => ({
  id,
  fromCentreM,
  bearingDeg: null,
  sensorHeightsM,
});

describe('sensorShares', () => {
  // Radius 5, cables at 0 and 3: circle at 1.5, so the centre has 2.25/25 = 0.09 and two cables at 3 share 0.91.
  // Depth 6, sensors at 1 and 4: cut at 2.5, so 2.5/6 and 3.5/6.
  it('by hand: a centre cable and two in a ring', () => {
    const shares = sensorShares(10, 6, [cable('C', 0, 1, 4), cable('A', 3, 1, 4), cable('B', 3, 4, 1)]);
    const of = (id: string, sensor: number) => shares.find((one) => one.cable === id && one.sensor === sensor)!;
    expect(of('C', 1).share).toBeCloseTo((0.09 * 2.5) / 6, 12);
    expect(of('C', 2).share).toBeCloseTo((0.09 * 3.5) / 6, 12);
    expect(of('A', 1).share).toBeCloseTo((0.455 * 2.5) / 6, 12);
    // B is numbered from the top: its sensor 1 hangs at 4 m.
    expect(of('B', 1).share).toBeCloseTo((0.455 * 3.5) / 6, 12);
    expect(of('B', 1).heightM).toBe(4);
    expect(of('A', 1).cableShare).toBeCloseTo(0.455, 12);
  });

  it('a sensor at or above the surface is out and its neighbour reaches to the surface', () => {
    const shares = sensorShares(10, 4, [cable('C', 0, 1, 3, 4, 5)]);
    expect(shares.map((one) => one.sensor)).toEqual([1, 2]);
    expect(shares.map((one) => one.share)).toEqual([0.5, 0.5]);
  });

  // 1, 3, 5 of depth 6 without the middle: cut at 3.
  it('neighbours take over from a sensor that cannot be used', () => {
    const shares = sensorShares(10, 6, [cable('C', 0, 1, 3, 5)], (_, sensor) => sensor !== 2);
    expect(shares.map((one) => one.share)).toEqual([0.5, 0.5]);
  });

  it('the ring of a cable with no sensor left goes to the others', () => {
    const cables = [cable('C', 0, 7, 8), cable('A', 3, 1), cable('B', 3, 1)];
    expect(sensorShares(10, 6, cables).map((one) => one.share)).toEqual([0.5, 0.5]);
    const one = sensorShares(10, 6, cables, (id) => id === 'B');
    expect(one.map((sensor) => [sensor.cable, sensor.share])).toEqual([['B', 1]]);
  });

  it('nine feet and its metres are one distance', () => {
    const shares = sensorShares(10, 6, [cable('A', 9 * 0.3048, 1), cable('B', 2.74, 1)]);
    expect(shares[0].share).toBeCloseTo(0.5, 12);
  });

  it('cables stated beyond the wall count as at the wall, and share its ring', () => {
    const shares = sensorShares(10, 6, [cable('A', 0, 1), cable('B', 5.2, 1), cable('C', 6, 1)]);
    // Cut at 2.5: the centre has a quarter.
    expect(shares.map((one) => one.share)).toEqual([0.25, 0.375, 0.375]);
  });

  it('two sensors at one height share it', () => {
    const shares = sensorShares(10, 6, [cable('A', 0, 1, 1, 3)]);
    expect(shares.map((one) => one.share)).toEqual([1 / 6, 1 / 6, 4 / 6]);
  });

  it('no sensor in the grain: no shares', () => {
    expect(sensorShares(10, 1, [cable('A', 0, 1, 2)])).toEqual([]);
  });

  it('refuses bins, cables and sensors that are nowhere, and tells the range', () => {
    expect(() => sensorShares(Number.NaN, 6, [cable('A', 0, 1)])).toThrow(
      /diameterM is NaN; it must lie between 0.1 and 1000/,
    );
    expect(() => sensorShares(10, -1, [cable('A', 0, 1)])).toThrow(/depthM is -1/);
    expect(() => sensorShares(10, 6, [cable('A', Number.NaN, 1)])).toThrow(/fromCentreM of cable A is NaN/);
    expect(() => sensorShares(10, 6, [cable('A', 0, 1, Number.NaN)])).toThrow(/height of sensor 2 of cable A is NaN/);
  });

  const layout = fc.record({
    radius: fc.double({ min: 1, max: 20, noNaN: true }),
    depth: fc.double({ min: 0.5, max: 15, noNaN: true }),
    cables: fc.array(
      fc.record({
        at: fc.double({ min: 0, max: 1, noNaN: true }),
        heights: fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 1, maxLength: 9 }),
      }),
      { minLength: 1, maxLength: 9 },
    ),
    out: fc.array(fc.nat(80), { maxLength: 20 }),
  });

  it('sums to one, is never negative, and does not hang on the order, whatever the layout', () => {
    fc.assert(
      fc.property(layout, ({ radius, depth, cables, out }) => {
        const built = cables.map((one, i) => cable(`C${i}`, one.at * radius, ...one.heights));
        const usable = (id: string, sensor: number) => !out.includes(Number(id.slice(1)) * 9 + sensor);
        const shares = sensorShares(2 * radius, depth, built, usable);
        const inside = built.some((one) => one.sensorHeightsM.some((h, i) => h < depth && usable(one.id, i + 1)));
        if (!inside) return shares.length === 0;
        const sum = shares.reduce((total, one) => total + one.share, 0);
        const turned = sensorShares(2 * radius, depth, [...built].reverse(), usable);
        const same = shares.every((one) => {
          const twin = turned.find((other) => other.cable === one.cable && other.sensor === one.sensor)!;
          return Math.abs(twin.share - one.share) < 1e-12;
        });
        return Math.abs(sum - 1) < 1e-9 && shares.every((one) => one.share >= -1e-15 && one.heightM < depth) && same;
      }),
      { seed: 20241004, numRuns: 500 },
    );
  });

  // On a cable with even spacing d, first sensor at d/2, the rule is the midpoint rule: exact for a straight line.
  it('weighs a straight profile to its exact mean', () => {
    const shares = sensorShares(10, 6, [cable('A', 2, 0.5, 1.5, 2.5, 3.5, 4.5, 5.5)]);
    const mean = shares.reduce((sum, one) => sum + one.share * (0.13 + 0.01 * one.heightM), 0);
    expect(mean).toBeCloseTo(0.13 + 0.01 * 3, 12);
  });
});
