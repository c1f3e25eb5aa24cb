import { KERNELS } from '../../sample/kernels.ts';
import type { Random } from '../../sample/random.ts';
import { between } from './chance.ts';
import type { CropId } from './grains.ts';

export interface Resistance {
  /** Pa s2/m3 and m2 s/m3 */
  a: number;
  b: number;
  packing: number;
}

/**
 * Packing may raise the resistance of loose clean grain by up to a half (notes of ASAE D272.3, read), and practice runs from
 * none (filled and levelled without a spreader) to all of it.
 */
const MOST_PACKING = 1.5;
/** Fines among corn, share of the mass; each raises its resistance by 14.56 times itself at low speeds (Haque and others 1978, from memory). */
const MOST_FINES = 0.03;
const PER_FINES = 14.5566;
const PER_FINES_SPEED = 26.418; // s/m

/** ASAE D272.3 (from memory): constants fitted to aeration rates alone, which part from the standard ones by up to a half, m/s. */
const LOW_AIRFLOW: Readonly<Partial<Record<CropId, { a: number; b: number; upToMS: number }>>> = {
  corn: { a: 9770, b: 8.55, upToMS: 0.0203 },
  wheat: { a: 8410, b: 2.72, upToMS: 0.0203 },
};

/**
 * The resistance of one bin's grain, over all that the published numbers leave open: packing, fines, and at aeration rates
 * either of two sets of constants.
 *
 * @param speedMS  superficial, that the farm wants
 */
export function drawResistance(random: Random, crop: CropId, speedMS: number): Resistance {
  const packing = between(random, 1, MOST_PACKING);
  const fines = between(random, 0, crop === 'corn' ? MOST_FINES : 0);
  const low = random.uniform() < 0.5 ? LOW_AIRFLOW[crop] : undefined;
  const { a, b } = low !== undefined && speedMS <= low.upToMS ? low : KERNELS[crop].resistance;
  return { a, b, packing: packing * (1 + (PER_FINES - PER_FINES_SPEED * speedMS) * fines) };
}
