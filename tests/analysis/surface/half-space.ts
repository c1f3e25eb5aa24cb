import { draws } from '../../season/checks/made-bin.ts';

/** m2/s */
export const DIFFUSIVITY = 1e-7;
/** The air film over the surface holds heat back as so much grain does, m. */
export const FILM_M = 0.155 / 4;

/**
 * Grain without end below a surface in a weather of waves, roughly of the weather's spectrum: each damped and delayed exactly (Carslaw and
 * Jaeger 1959, 2.6).
 *
 * @returns  C, so far below the air, on a day
 */
export function halfSpace(seed: number, diffusivityM2S = DIFFUSIVITY): (depthM: number, day: number) => number {
  const random = draws(seed);
  const waves = [3, 5, 8, 13, 21, 34, 55, 89, 144].map((period) => {
    const w = (2 * Math.PI) / (period * 86_400);
    const k = Math.sqrt(w / (2 * diffusivityM2S));
    return { w, k, phase: 2 * Math.PI * random.uniform(), heightK: 3 * random.normal() };
  });
  return (depthM, day) =>
    waves.reduce(
      (sum, { w, k, phase, heightK }) =>
        sum + heightK * Math.exp(-k * depthM) * Math.cos(w * day * 86_400 + phase - k * depthM),
      8,
    );
}
