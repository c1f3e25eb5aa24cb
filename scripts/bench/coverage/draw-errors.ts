import type { Random } from '../../sample/random.ts';
import { between, limit95, pick, SHAPES } from './chance.ts';
import type { BinDraw, MoistureErrors } from './plan.ts';
import { sharedLimit } from './shared-limit.ts';

/** Limits as data sheets give them, and errors of many shapes that keep them 95 times in a hundred. */
export function drawErrors(random: Random): MoistureErrors {
  const shape = pick(random, SHAPES);
  const cablePart = pick(random, [0, 0.3, 0.6]);
  const noiseShape = pick(random, SHAPES);
  const stated = random.uniform() < 0.75;
  const accuracy = stated ? pick(random, [0.3, 0.5, 0.8, 1]) : 0.5;
  return {
    shape,
    cablePart,
    fixed: accuracy / limit95(shape, cablePart),
    inHumidity: random.uniform() < 0.3,
    bias: (stated ? pick(random, [0.2, 0.3, 0.5]) : 0.5) / 1.96,
    noiseShape,
    noise: between(random, 0.05, 0.2) / limit95(noiseShape, 0),
    drift: between(random, 0.02, 0.14),
    driftCablePart: pick(random, [0, 0.5]),
    stated,
  };
}

/** What a data sheet would say of those errors: limits that 95 % keep, points. */
export function statedLimits({ moistureErrors: errors, crop, cableCurve }: BinDraw): {
  accuracy: number;
  noise: number;
  bias: number;
} {
  return {
    accuracy: errors.fixed * limit95(errors.shape, errors.cablePart),
    noise: errors.noise * limit95(errors.noiseShape, 0),
    bias: sharedLimit(crop, cableCurve, errors.bias),
  };
}
