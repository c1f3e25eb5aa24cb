import { errorFunction } from 'simple-statistics';

/** Largest diffusivity of bulk grain: 1.3e-7 m2/s (asae-d243, from memory), m2 a day. */
const DIFFUSIVITY_M2_DAY = 1.3e-7 * 86_400;
/** Roots of J0, and 2 / (root J1(root)): a cylinder's axis while its outside is held (tables of Bessel functions). */
const CYLINDER = [
  [2.4048, 1.602],
  [5.5201, -1.0648],
  [8.6537, 0.8514],
  [11.7915, -0.7296],
  [14.9309, 0.6485],
  [18.0711, -0.5895],
] as const;
/** Before, less than a thousandth has come to the axis, and the series above is too short. */
const LEAST_FOURIER = 0.02;

/** Distances of a place from what touches the grain outside, m; Infinity: nothing there. */
export interface EdgeDistances {
  heightM: number;
  toSurfaceM: number;
  toWallM: number;
}

/**
 * Part of a lasting difference between grain and outside that conduction has brought to a place after some days, at most: the sum
 * over floor and surface as half-spaces and the wall as a cylinder around the place that just touches it. Each is caloric, none is
 * below 0 and on each face one of them is 1, so their sum bounds the true one (comparison principle).
 *
 * @param days  [0, ...]: whole numbers of days
 * @returns     [days], 0 to 1, rising
 * @source      carslaw-jaeger-1959, ch. 2 and 7
 */
export function edgeResponse({ heightM, toSurfaceM, toWallM }: EdgeDistances, days: number): Float64Array {
  const out = new Float64Array(days);
  for (let n = 1; n < days; n++) {
    const sum = plane(heightM, n) + plane(toSurfaceM, n) + cylinder(toWallM, n);
    out[n] = Math.max(out[n - 1], Math.min(1, sum));
  }
  return out;
}

function plane(distanceM: number, days: number): number {
  return 1 - errorFunction(Math.max(0, distanceM) / (2 * Math.sqrt(DIFFUSIVITY_M2_DAY * days)));
}

function cylinder(radiusM: number, days: number): number {
  const fourier = (DIFFUSIVITY_M2_DAY * days) / Math.max(0, radiusM) ** 2;
  if (fourier < LEAST_FOURIER) return 0;
  const left = CYLINDER.reduce((sum, [root, part]) => sum + part * Math.exp(-(root ** 2) * fourier), 0);
  return Math.min(1, Math.max(0, 1 - left));
}

/**
 * How far warmth from outside may have lifted a place that would else be no warmer than some temperature, K. The response is the
 * most that can be; in slower grain the same part comes later and from warmer days before, so each part counts by the warmest of its day
 * and all before it.
 *
 * @param response  of the place, [days], longer than the days
 * @param outsideC  by day, the place's day last, [days]; NaN where not known: nothing came in
 */
export function edgeWarmthK(response: Float64Array, outsideC: Float64Array, warmestC: number): number {
  const count = outsideC.length;
  let mostK = 0;
  let sumK = 0;
  for (let d = 0; d < count; d++) {
    const overK = outsideC[d] - warmestC;
    if (overK > mostK) mostK = overK;
    sumK += (response[count - d] - response[count - d - 1]) * mostK;
  }
  return sumK;
}
