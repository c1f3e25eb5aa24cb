import { DIFFUSIVITY, FILM_M, halfSpace } from './half-space.ts';

export interface Cylinder {
  diameterM: number;
  depthM: number;
  /** of the cable */
  fromCentreM: number;
  days: number;
  seed: number;
}

const CELL_M = 0.1;
const STEP_S = 6 * 3600;

/**
 * Grain at rest in a bin whose wall, floor and surface all meet the weather, by conduction in height and radius (explicit steps in cells of
 * 10 cm: far within what is stable at 1e-7 m2/s), 15 degC at the start; the air under the roof is 2 K warmer than outdoors.
 *
 * @returns  C at a height of the cable, or outdoors, on a day
 */
export function cylinder({ diameterM, depthM, fromCentreM, days, seed }: Cylinder) {
  const outdoorC = (day: number) => halfSpace(seed)(0, day);
  const rings = Math.round(diameterM / 2 / CELL_M);
  const layers = Math.round(depthM / CELL_M);
  const rate = (DIFFUSIVITY * STEP_S) / CELL_M ** 2;
  /** half a cell and the air film lie between the last cell and the air */
  const toAir = CELL_M / (CELL_M / 2 + FILM_M);
  let tempC = new Float64Array(rings * layers).fill(15);
  const seen: Float64Array[] = [];
  const ring = Math.min(rings - 1, Math.floor(fromCentreM / CELL_M));
  for (let step = 0; step <= 4 * days; step++) {
    seen.push(tempC.slice(ring * layers, (ring + 1) * layers));
    const airC = outdoorC(step / 4);
    tempC = tempC.map((own, i) => {
      const [r, z] = [Math.floor(i / layers), i % layers];
      const up = z + 1 < layers ? tempC[i + 1] - own : toAir * (airC + 2 - own);
      const down = z > 0 ? tempC[i - 1] - own : toAir * (airC - own);
      const out = r + 1 < rings ? tempC[i + layers] - own : toAir * (airC - own);
      const into = r > 0 ? tempC[i - layers] - own : 0;
      // Faces of a ring grow with the radius: so much for each side, over the ring's own middle.
      return own + rate * (up + down + (out * (r + 1) + into * r) / (r + 0.5));
    });
  }
  return {
    outdoorC,
    tempC: (heightM: number, day: number) => {
      const at = Math.min(layers - 1.001, Math.max(0, heightM / CELL_M - 0.5));
      const [z, step] = [Math.floor(at), Math.round(4 * day)];
      return seen[step][z] + (at - z) * (seen[step][z + 1] - seen[step][z]);
    },
  };
}
