import { describe, expect, it } from 'vitest';
import { grainSurface } from '../../../src/analysis/surface/grain-surface.ts';
import { keptInput } from '../condition/kept-bin.ts';
import { FILM_M, halfSpace } from './half-space.ts';

/** Fifty days of rest; the sensor below hangs 0.9 m farther down. */
function told(distanceM: number, seed: number) {
  const grainAt = halfSpace(seed);
  const input = keptInput({
    days: 60,
    heightsM: [1, 2, 3, 5 - distanceM - 0.9, 5 - distanceM].sort((a, b) => a - b),
    tempC: (heightM, day) => grainAt(5 + FILM_M - heightM, day),
    outdoorC: (day) => grainAt(0, day) - 2,
    fanOn: (day) => day < 10,
    fromCentreM: 10 / 3,
    depths: [{ day: 0, depthM: 5 }],
  });
  return grainSurface({ ...input, moistureWb: 0.15 }).depthM;
}

describe('a highest sensor that alone sees weather', () => {
  it('tells of a surface near above it, not of one that might as well lie farther off', () => {
    for (const seed of [4, 5]) {
      const near = told(0.4, seed);
      expect(near.why).toBeNull();
      expect(Math.abs(near.value! - 5)).toBeLessThan(0.15);
      expect(told(1.1, seed).why).toMatch(/too little of the weather/);
    }
  });
});
