import { DRAWN, SHORT_REL_SD } from '../../../src/analysis/model/may-be.ts';
import { spreadNormals } from '../../../src/base/stats/spread-normals.ts';
import type { Doubt } from '../../../src/simulation/doubt/doubted-spec.ts';
import { LEFT } from './draw-bin.ts';

const AS_BELIEVED: Doubt = { airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 };

/** The bin as believed, then others that it may be by what a fit leaves, as many and spread as the kit's own are. */
export const DOUBTS: readonly Doubt[] = [
  AS_BELIEVED,
  ...spreadNormals(DRAWN, 4).map(([air, moisture, rate, short]) => ({
    airFactor: Math.exp(LEFT.air * air),
    moistureWb: LEFT.moistureWb * moisture,
    rateFactor: Math.exp(LEFT.rate * rate),
    shortFactor: Math.exp(SHORT_REL_SD * short),
  })),
];
