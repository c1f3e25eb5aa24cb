import { assertRange } from '../base/errors.ts';

/** Grain at rest between two faces whose temperatures are known, as one place between them sees it. */
export interface Slab {
  /** from face to face, m, 0.02 to 100: two sensors that still work may hang far apart in a silo */
  thicknessM: number;
  /** of the place above the lower face, m, within the slab */
  placeM: number;
  /** m2/s, 1e-8 to 1e-6 */
  diffusivityM2S: number;
  /** even steps, s, 60 to 86 400 */
  stepS: number;
  /** share of the difference to `sideC` that is made up in a second everywhere, 0 to 1e-4: a wall not far off */
  sideRate1S: number;
}

/** What drives a slab; arrays are [steps] at the end of each step, the first at the start; degC or any linear scale. */
export interface SlabFaces {
  lowerC: Float64Array;
  upperC: Float64Array;
  sideC: Float64Array;
  /** at the start, by height above the lower face, m */
  startC(heightM: number): number;
}

const CELL_M = 0.05;
const LEAST_CELLS = 8;

/**
 * Temperatures at a place of grain at rest between two faces, by conduction up and down and exchange with a side (Crank and Nicolson's
 * steps in cells of 5 cm: with a quarter day a wave of ten days is right to a few hundredths).
 *
 * @returns  runs of one slab with any faces, each [steps]
 * @source   Fourier's law; tests hold it against carslaw-jaeger-1959, ch. 2
 * @valid    throws RangeError outside
 */
export function slabOf({
  thicknessM,
  placeM,
  diffusivityM2S,
  stepS,
  sideRate1S,
}: Slab): (faces: SlabFaces) => Float64Array {
  assertRange('thicknessM', thicknessM, 0.02, 100);
  assertRange('placeM', placeM, 0, thicknessM);
  assertRange('diffusivityM2S', diffusivityM2S, 1e-8, 1e-6);
  assertRange('stepS', stepS, 60, 86_400);
  assertRange('sideRate1S', sideRate1S, 0, 1e-4);
  const cells = Math.max(LEAST_CELLS, Math.ceil(thicknessM / CELL_M));
  const cellM = thicknessM / cells;
  // Of the flows at the start of a step and at its end one half each.
  const up = (diffusivityM2S * stepS) / cellM ** 2 / 2;
  const side = (sideRate1S * stepS) / 2;
  const stays = 1 - 2 * up - side;
  // One sweep up and one down solve a step; what they divide by is the same in all steps.
  const pivots = new Float64Array(cells);
  const eased = new Float64Array(cells);
  for (let i = 1; i < cells; i++) {
    pivots[i] = 1 / (1 + 2 * up + side - up * eased[i - 1]);
    eased[i] = up * pivots[i];
  }
  const low = Math.min(cells - 1, Math.floor(placeM / cellM));
  const part = placeM / cellM - low;
  return ({ lowerC, upperC, sideC, startC }) => {
    const tempC = Float64Array.from({ length: cells + 1 }, (_, i) => startC(i * cellM));
    const swept = new Float64Array(cells);
    const shown = new Float64Array(lowerC.length);
    for (let step = 0; step < shown.length; step++) {
      if (step > 0) {
        swept[0] = lowerC[step];
        const fromSide = side * (sideC[step - 1] + sideC[step]);
        for (let i = 1; i < cells; i++) {
          const before = stays * tempC[i] + up * (tempC[i - 1] + tempC[i + 1]) + fromSide;
          swept[i] = (before + up * swept[i - 1]) * pivots[i];
        }
        tempC[cells] = upperC[step];
        for (let i = cells - 1; i > 0; i--) tempC[i] = swept[i] + eased[i] * tempC[i + 1];
        tempC[0] = lowerC[step];
      }
      shown[step] = tempC[low] + part * (tempC[low + 1] - tempC[low]);
    }
    return shown;
  };
}
