import { describe, expect, it } from 'vitest';
import { surfaceDistance } from '../../../src/analysis/surface/surface-distance.ts';
import { draws } from '../../season/checks/made-bin.ts';
import { DIFFUSIVITY, FILM_M, halfSpace } from './half-space.ts';

interface Made {
  distanceM: number;
  days?: number;
  seed?: number;
  roofK?: number;
  /** of the grain, over what the fit takes */
  diffusivity?: number;
}

function made({ distanceM, days = 120, seed = 1, roofK = 2, diffusivity = 1 }: Made) {
  const gapM = 0.9;
  const random = draws(1000 + seed);
  const grainAt = halfSpace(seed, DIFFUSIVITY * diffusivity);
  const at = (depthM: number, noiseK: number) =>
    Float64Array.from({ length: 4 * days }, (_, i) => grainAt(depthM, i / 4) + noiseK * random.normal());
  const rest = {
    topC: at(distanceM + FILM_M, 0.1),
    belowC: at(distanceM + FILM_M + gapM, 0.1),
    outdoorC: at(0, 0).map((value) => value - roofK),
  };
  return { rest, grain: { gapM, toWallM: 3, diffusivityM2S: DIFFUSIVITY, relSd: 0.08 } };
}

describe('surfaceDistance', () => {
  it('finds a surface by exact waves of a half-space, whatever weather and roof', () => {
    for (const distanceM of [0.15, 0.3, 0.5, 0.8, 1.1]) {
      for (let seed = 1; seed <= 12; seed++) {
        const { rest, grain } = made({ distanceM, seed, roofK: seed % 4 });
        const found = surfaceDistance([rest], grain)!;
        const [low, high] = found.intervalM;
        expect(found.restK).toBeLessThan(0.35);
        expect(low, `${distanceM} m, ${seed}`).toBeLessThan(distanceM);
        expect(high, `${distanceM} m, ${seed}`).toBeGreaterThan(distanceM);
        expect(Math.abs(found.bestM - distanceM), `${distanceM} m, ${seed}`).toBeLessThan(0.05 + 0.15 * distanceM);
      }
    }
  });

  it('holds the truth where the grain conducts better or worse than published', () => {
    let held = 0;
    const random = draws(5);
    for (let seed = 1; seed <= 60; seed++) {
      const distanceM = 0.2 + 0.8 * random.uniform();
      const { rest, grain } = made({ distanceM, seed, diffusivity: Math.exp(0.12 * random.normal()) });
      const [low, high] = surfaceDistance([rest], grain)!.intervalM;
      if (low <= distanceM && distanceM <= high) held++;
    }
    expect(held).toBeGreaterThanOrEqual(54);
  });

  it('tells only that it is far where next to nothing comes in from above', () => {
    const { rest, grain } = made({ distanceM: 4, days: 60 });
    const found = surfaceDistance([rest], grain)!;
    expect(found.intervalM[1]).toBe(Number.POSITIVE_INFINITY);
    expect(found.intervalM[0]).toBeGreaterThan(0.5);
  });

  it('joins two rests, and passes over steps without a reading', () => {
    const one = made({ distanceM: 0.6, seed: 3, days: 40 });
    const other = made({ distanceM: 0.6, seed: 4, days: 40 });
    const sparse = one.rest.topC.map((value, i) => (i % 28 === 3 ? value : Number.NaN));
    const width = (rests: Parameters<typeof surfaceDistance>[0]) => {
      const [low, high] = surfaceDistance(rests, one.grain)!.intervalM;
      expect(low).toBeLessThan(0.6);
      expect(high).toBeGreaterThan(0.6);
      return high - low;
    };
    expect(width([one.rest, other.rest])).toBeLessThan(width([{ ...one.rest, topC: sparse }]));
  });

  it('is not told without a reading', () => {
    const { rest, grain } = made({ distanceM: 0.6, days: 20 });
    expect(surfaceDistance([], grain)).toBeNull();
    expect(surfaceDistance([{ ...rest, topC: rest.topC.map(() => Number.NaN) }], grain)).toBeNull();
  });
});
