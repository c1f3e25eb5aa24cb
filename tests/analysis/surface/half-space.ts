import { draws } from '../../season/checks/made-bin.ts';

/** m2/s */
export const DIFFUSIVITY = 1e-7;
/** The air film over the surface holds heat back as so much grain does, m. */
export const FILM_M = 0.155 / 4;

/**
 * Grain without end below a surface in a weather of waves, roughly of the weather's spectrum: each damped and delayed exactly (Carslaw and
 * Jaeger 1959, 2.6; with air that creeps through, the root of L^2 - b L = i w / a, solved by hand).
 *
 * @param creepPerM  b, heat that creeping air carries up over what is conducted, 1/m: 0.8 for 0.1 mm/s up, below 0 down
 * @returns          C, so far below the air, on a day
 */
export function halfSpace(
  seed: number,
  diffusivityM2S = DIFFUSIVITY,
  creepPerM = 0,
): (depthM: number, day: number) => number {
  const random = draws(seed);
  const waves = [3, 5, 8, 13, 21, 34, 55, 89, 144].map((period) => {
    const w = (2 * Math.PI) / (period * 86_400);
    const real = creepPerM ** 2;
    const size = Math.hypot(real, (4 * w) / diffusivityM2S);
    const damping = (creepPerM + Math.sqrt((size + real) / 2)) / 2;
    const delay = Math.sqrt((size - real) / 2) / 2;
    return { w, damping, delay, phase: 2 * Math.PI * random.uniform(), heightK: 3 * random.normal() };
  });
  return (depthM, day) =>
    waves.reduce(
      (sum, { w, damping, delay, phase, heightK }) =>
        sum + heightK * Math.exp(-damping * depthM) * Math.cos(w * day * 86_400 + phase - delay * depthM),
      8,
    );
}
