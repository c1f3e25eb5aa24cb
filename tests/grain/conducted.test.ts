import { errorFunction } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { slabOf } from '../../src/grain/conducted.ts';

const DIFFUSIVITY = 1e-7;
const STEP_S = 6 * 3600;
const none = (steps: number) => new Float64Array(steps);

describe('slabOf', () => {
  it('damps and delays a wave of the surface as deep grain does', () => {
    // Half-space whose face swings: exp(-x k) cos(w t - x k), k the root of w / (2 a). Carslaw and Jaeger 1959, 2.6.
    for (const [days, part] of [
      [10, 15],
      [30, 60],
      [90, 100],
    ]) {
      const w = (2 * Math.PI) / (days * 86_400);
      const k = Math.sqrt(w / (2 * DIFFUSIVITY));
      const steps = 4 * 400;
      const wave = (depthM: number) =>
        Float64Array.from({ length: steps }, (_, i) => Math.exp(-k * depthM) * Math.cos(w * i * STEP_S - k * depthM));
      const run = slabOf({ thicknessM: 3, placeM: 2.5, diffusivityM2S: DIFFUSIVITY, stepS: STEP_S, sideRate1S: 0 });
      const shown = run({ lowerC: wave(3), upperC: wave(0), sideC: none(steps), startC: () => 0 });
      const exact = wave(0.5);
      // The start, which is no wave, is gone by the second hundred days. Steps of a quarter day and cells of 5 cm err by so small a part of the wave.
      const height = Math.max(...exact.subarray(800));
      for (let i = 800; i < steps; i++) expect(Math.abs(shown[i] - exact[i])).toBeLessThan(height / part);
    }
  });

  it('lets a step of the surface in as the error function says', () => {
    // Half-space at 0, its face at 1 from the start on: 1 - erf(x / (2 root(a t))). Carslaw and Jaeger 1959, 2.5.
    const steps = 4 * 60;
    const run = slabOf({ thicknessM: 6, placeM: 5.5, diffusivityM2S: DIFFUSIVITY, stepS: STEP_S, sideRate1S: 0 });
    const one = new Float64Array(steps).fill(1);
    const shown = run({ lowerC: none(steps), upperC: one, sideC: none(steps), startC: () => 0 });
    for (const day of [10, 30, 59]) {
      const exact = 1 - errorFunction(0.5 / (2 * Math.sqrt(DIFFUSIVITY * day * 86_400)));
      expect(shown[4 * day]).toBeCloseTo(exact, 2);
    }
  });

  it('goes straight from face to face at last, and towards the side where there is one', () => {
    const steps = 4 * 3000;
    const faces = {
      lowerC: none(steps),
      upperC: new Float64Array(steps).fill(10),
      sideC: new Float64Array(steps).fill(-5),
      startC: () => 3,
    };
    const slab = { thicknessM: 2, placeM: 0.7, diffusivityM2S: DIFFUSIVITY, stepS: STEP_S };
    expect(slabOf({ ...slab, sideRate1S: 0 })(faces)[steps - 1]).toBeCloseTo(3.5, 3);
    // With exchange: a T'' = r (T - S), solved by hand with k the root of r / a.
    const rate = 2e-7;
    const k = Math.sqrt(rate / DIFFUSIVITY);
    const exact = -5 + (5 * Math.sinh(k * 1.3) + 15 * Math.sinh(k * 0.7)) / Math.sinh(k * 2);
    expect(slabOf({ ...slab, sideRate1S: rate })(faces)[steps - 1]).toBeCloseTo(exact, 2);
  });

  it('refuses what is no slab', () => {
    const slab = { thicknessM: 2, placeM: 1, diffusivityM2S: DIFFUSIVITY, stepS: STEP_S, sideRate1S: 0 };
    for (const [key, value] of [
      ['thicknessM', 0],
      ['placeM', 2.1],
      ['diffusivityM2S', 1],
      ['stepS', 0],
      ['sideRate1S', -1],
    ]) {
      expect(() => slabOf({ ...slab, [key as string]: value })).toThrow(RangeError);
    }
  });
});
