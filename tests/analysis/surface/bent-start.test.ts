import { describe, expect, it } from 'vitest';
import { surfaceDistance } from '../../../src/analysis/surface/surface-distance.ts';
import { DIFFUSIVITY, halfSpace } from './half-space.ts';

/** A fan blows the air's days into the grain as waves in height: each fades evenly as exp(-(2 pi / L)^2 a t). Carslaw and Jaeger 1959, 2.2 (from memory). */
function rippled(waveM: number, phase: number, days: number) {
  const fading = (2 * Math.PI) / waveM;
  const at = (heightM: number) =>
    Float64Array.from({ length: 4 * days }, (_, i) => {
      const left = Math.exp(-(fading ** 2) * DIFFUSIVITY * (i / 4) * 86_400);
      return 8 + 4 * left * Math.cos(fading * heightM + phase) + 0.05 * Math.sin(i * i);
    });
  return { topC: at(0.9), belowC: at(0) };
}

describe('grain whose fan left warmer and colder layers', () => {
  it('is not taken for grain into which the weather comes from above', () => {
    let seen = 0;
    for (const waveM of [2, 3, 4]) {
      for (let k = 0; k < 8; k++) {
        const days = 40;
        const grainAt = halfSpace(20 + k);
        const outdoorC = Float64Array.from({ length: 4 * days }, (_, i) => grainAt(0, i / 4) - 2);
        const rest = { ...rippled(waveM, (k * Math.PI) / 4, days), outdoorC };
        const found = surfaceDistance([rest], { gapM: 0.9, toWallM: 4, diffusivityM2S: DIFFUSIVITY, relSd: 0.08 })!;
        // The surface lies far above: nothing of the weather is in the readings.
        if (found.intervalM[1] < 3) seen++;
      }
    }
    expect(seen).toBeLessThanOrEqual(2);
  });
});
