import { describe, expect, it } from 'vitest';
import { edgeResponse, edgeWarmthK } from '../../../src/analysis/condition/edge-response.ts';

const DIFFUSIVITY = 1.3e-7 * 86_400;

/**
 * What has come to the middle of a ball of dimension 1 (a plate), 2 (a long cylinder) or 3 whose outside is held at 1, by explicit
 * steps on 60 shells: a way of its own.
 */
function middleOf(dimension: 1 | 2 | 3, radiusM: number, days: number): number {
  const cells = 60;
  const dr = radiusM / cells;
  const steps = Math.ceil((days * DIFFUSIVITY) / (0.15 * dr ** 2));
  const r = (days * DIFFUSIVITY) / steps / dr ** 2;
  let temps = new Float64Array(cells);
  const face = (c: number) => c ** (dimension - 1);
  const volume = Array.from({ length: cells }, (_, c) => ((c + 1) ** dimension - c ** dimension) / dimension);
  for (let step = 0; step < steps; step++) {
    temps = temps.map((one, c) => {
      const out = c === cells - 1 ? 2 * face(cells) * (1 - one) : face(c + 1) * (temps[c + 1] - one);
      const into = c === 0 ? 0 : face(c) * (temps[c - 1] - one);
      return one + (r * (out + into)) / volume[c];
    });
  }
  return temps[0];
}
const FAR = Number.POSITIVE_INFINITY;

describe('what the outside brings to a place', () => {
  it.each([10, 21, 40, 60])('by the wall is that of a cylinder that touches it, after %d days', (days) => {
    for (const toWallM of [0.8, 1.5, 2.5]) {
      const [told] = edgeResponse({ heightM: FAR, toSurfaceM: FAR, toWallM }, days + 1).slice(-1);
      expect(Math.abs(told - middleOf(2, toWallM, days)), `${toWallM} m`).toBeLessThan(0.01);
    }
  });

  it('by floor and surface is never less than in a plate of the bin’s depth', () => {
    for (const days of [5, 21, 60]) {
      for (const half of [0.5, 1, 2]) {
        const told = edgeResponse({ heightM: half, toSurfaceM: half, toWallM: FAR }, days + 1)[days];
        const plate = middleOf(1, half, days);
        expect(told).toBeGreaterThan(plate - 0.01);
        // Two half-spaces count twice only what a plate has filled by much.
        if (plate < 0.3) expect(told).toBeLessThan(plate + 0.03);
      }
    }
  });

  it('rises from nothing to all', () => {
    const near = edgeResponse({ heightM: 0.05, toSurfaceM: 3, toWallM: 4 }, 62);
    expect(near[0]).toBe(0);
    expect(near[21]).toBeGreaterThan(0.9);
    for (let n = 1; n < 62; n++) expect(near[n]).toBeGreaterThanOrEqual(near[n - 1]);
    expect(edgeResponse({ heightM: 0, toSurfaceM: 0, toWallM: 0 }, 5)[4]).toBe(1);
    expect(edgeResponse({ heightM: 3, toSurfaceM: 3, toWallM: 5 }, 62)[61]).toBeLessThan(0.05);
  });

  it('holds what any slower grain takes in of warm days, however these lie', () => {
    const response = edgeResponse({ heightM: 1, toSurfaceM: FAR, toWallM: FAR }, 62);
    // The same wall in grain of a third of the diffusivity: as if so many days were a third of them.
    const slower = Float64Array.from(
      { length: 31 },
      (_, n) => edgeResponse({ heightM: Math.sqrt(3), toSurfaceM: FAR, toWallM: FAR }, 62)[n],
    );
    for (const [from, to] of [
      [0, 30],
      [0, 5],
      [10, 12],
      [25, 30],
    ]) {
      const outsideC = Float64Array.from({ length: 30 }, (_, d) => (d >= from && d < to ? 20 : -5));
      const told = edgeWarmthK(response, outsideC, 10);
      const taken = (of: Float64Array) => 10 * (of[30 - from] - of[30 - to]);
      expect(told).toBeGreaterThanOrEqual(taken(response) - 1e-12);
      expect(told).toBeGreaterThanOrEqual(taken(slower));
      // And no more than all of the time at its warmest since then.
      expect(told).toBeCloseTo(10 * response[30 - from], 12);
    }
    expect(edgeWarmthK(response, new Float64Array(30).fill(9), 10)).toBe(0);
  });
});
