/** A strip of still grain between a sensor and the outside: cut into cells from the sensor's side outward. */
export interface Strip {
  /** of each cell, per metre of whatever the strip is long or deep in the other directions, [cells] */
  volumes: Float64Array;
  /** area of the face before each cell and, last, the outer face, over the distance between the middles on its two sides, [cells + 1] */
  conductances: Float64Array;
}

const CELL_M = 0.1;
const LEAST_CELLS = 8;

/**
 * A strip between two distances from the axis of a round bin, or a flat layer.
 *
 * @param fromM, toM  m, 0 <= from < to
 * @param round       true: radii; false: a flat layer, of which only the thickness counts
 */
export function makeStrip(fromM: number, toM: number, round: boolean): Strip {
  const cells = Math.max(LEAST_CELLS, Math.ceil((toM - fromM) / CELL_M));
  const step = (toM - fromM) / cells;
  const at = (i: number) => fromM + i * step;
  return {
    volumes: Float64Array.from({ length: cells }, (_, i) => (round ? Math.PI * (at(i + 1) ** 2 - at(i) ** 2) : step)),
    conductances: Float64Array.from({ length: cells + 1 }, (_, i) => {
      const area = round ? 2 * Math.PI * at(i) : 1;
      return area / (i === 0 || i === cells ? step / 2 : step);
    }),
  };
}

/**
 * One step of heat conduction through the strip, both faces held at a temperature; implicit, stable at any step.
 *
 * @param tempC          of the cells, C, [cells]; changed in place
 * @param diffusivityM2S of the grain
 * @source  conservation of heat, backward Euler; checked against the error-function solution of the half-space
 *          (Carslaw and Jaeger, Conduction of Heat in Solids, 2.4) and its periodic one (2.6)
 */
export function conduct(
  { volumes, conductances }: Strip,
  tempC: Float64Array,
  innerC: number,
  outerC: number,
  diffusivityM2S: number,
  seconds: number,
): void {
  const n = volumes.length;
  const carry = new Float64Array(n);
  const k = diffusivityM2S * seconds;
  // Thomas algorithm on (V + k (g_i + g_i+1)) T_i - k g_i T_i-1 - k g_i+1 T_i+1 = V T_i(old).
  for (let i = 0; i < n; i++) {
    const before = k * conductances[i];
    const after = k * conductances[i + 1];
    let right = volumes[i] * tempC[i];
    let diagonal = volumes[i] + before + after;
    if (i === 0) right += before * innerC;
    else {
      right += before * tempC[i - 1];
      diagonal -= before * carry[i - 1];
    }
    if (i === n - 1) right += after * outerC;
    carry[i] = after / diagonal;
    tempC[i] = right / diagonal;
  }
  for (let i = n - 2; i >= 0; i--) tempC[i] += carry[i] * tempC[i + 1];
}

/** Mean temperature of the strip, C. */
export function stripMean({ volumes }: Strip, tempC: Float64Array): number {
  let sum = 0;
  let total = 0;
  volumes.forEach((volume, i) => {
    sum += volume * tempC[i];
    total += volume;
  });
  return sum / total;
}
