import { toDryBasis, toWetBasis } from '../../sample/kernels.ts';
import { randomStream } from '../../sample/random.ts';
import { between, pick } from './chance.ts';
import { type CropId, CURVES, type NamedCurve } from './grains.ts';

/** About how often the grain of a drawn bin follows the very isotherm by which its cables work. */
const SAME = 0.55;
/** Moistures (% wet basis) and temperatures (C) that a crop's bins go through. */
const RANGE_WB: Readonly<Record<CropId, readonly [number, number]>> = {
  corn: [13, 21],
  soybean: [10, 16.5],
  wheat: [11, 17],
};
const RANGE_C = [0, 25] as const;
const DRAWS = 4000;

const known = new Map<string, number>();

/**
 * The limit that 95 % of the errors keep which a bin's sensors share, points: their bias, and what the cables' isotherm
 * errs by in a grain that follows another. That is what an honest statement of `bias` must hold.
 *
 * @param biasSd  of the bias alone, points
 */
export function sharedLimit(crop: CropId, cable: NamedCurve, biasSd: number): number {
  const key = `${crop} ${cable.name} ${biasSd}`;
  let found = known.get(key);
  if (found === undefined) {
    const random = randomStream(13, key);
    const others = CURVES[crop].filter((one) => one !== cable);
    const sizes = Float64Array.from({ length: DRAWS }, () => {
      const grain = random.uniform() < SAME ? cable : pick(random, others);
      const wb = between(random, ...RANGE_WB[crop]);
      const tempC = between(random, ...RANGE_C);
      const told = toWetBasis(cable.curve.emc(grain.curve.erh(toDryBasis(wb), tempC), tempC));
      return Math.abs(told - wb + biasSd * random.normal());
    });
    sizes.sort();
    found = sizes[Math.floor(0.95 * DRAWS)];
    known.set(key, found);
  }
  return found;
}
