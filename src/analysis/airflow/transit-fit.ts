import { firstNotBefore } from '../../base/first-not-before.ts';
import { type PassingCurve, passingAt } from './passing-curve.ts';

/** Airflow that carries what one sensor saw to the next one. */
export interface TransitFit {
  /** dry air, kg/(s m2) */
  fluxKgM2S: number;
  /** standard error of its logarithm */
  logSd: number;
  /** part of the variance at the first sensor that the second one repeats, 1 at best */
  likeness: number;
}

/** How a temperature moves up: `ratioAt` dry grain that it passes for each kg of dry air (kg/kg), the bed's dry matter kg/m3. */
export interface Carriage {
  ratioAt: (tempC: number) => number;
  dryMatterKgM3: number;
}

/** From 0.01 to 4 cfm/bu in a bed of 6 m; step 6 %. */
const LEAST_FLUX = 0.0008;
const MOST_FLUX = 0.6;
const STEP = 1.06;
/** Moments of the first sensor that must find a partner, and the least part of them all. */
const LEAST_MATCHES = 6;
const LEAST_PART = 0.5;
/** The temperature must have moved: its standard deviation over the matches, K. */
const LEAST_SD_K = 0.7;
/** Readings farther apart than this, fan hours, are not joined by a line. */
const GAP_H = 9;
/** Misfits of neighbouring moments hang together: so many count as one. */
const TOGETHER = 3;
/** Delays tried about the best one to find the bottom: so many on each side, as far as 2 h, within these parts of the delay. */
const BOWL_POINTS = 4;
const BOWL_H = 2;
const BOWL_LEAST = 0.12;
const BOWL_MOST = 0.4;
/** Readings, their steps and noise cannot agree better, K. */
const LEAST_MISFIT_K = 0.25;

/**
 * Each temperature that passes the first sensor is looked for at the second, later by the fan hours that it takes on its way
 * by the balances of heat and water: warm grain carries a change faster than cool grain. The airflow is the one at which
 * the two logs agree best (least squares).
 *
 * @param first, second  from where the air enters on
 * @param distanceM      between them, > 0
 * @param fromH, toH     fan hours
 * @returns              null where nothing moved, the readings are too few, or no airflow in reach fits better than its neighbours
 */
export function transitFit(
  first: PassingCurve,
  second: PassingCurve,
  distanceM: number,
  fromH: number,
  toH: number,
  { ratioAt, dryMatterKgM3 }: Carriage,
): TransitFit | null {
  const begin = firstNotBefore(first.fanHour, fromH);
  const end = firstNotBefore(first.fanHour, toH);
  if (end - begin < LEAST_MATCHES) return null;
  /** hours times flux for each moment of the first sensor */
  const way = new Float64Array(end - begin);
  for (let i = 0; i < way.length; i++) {
    way[i] = (distanceM * dryMatterKgM3) / ratioAt(first.tempC[begin + i]) / 3600;
  }
  const misfit = (flux: number): { part: number; mean: number; count: number } | null => {
    let squares = 0;
    let sum = 0;
    let sumSquares = 0;
    let count = 0;
    for (let i = 0; i < way.length; i++) {
      const at = first.fanHour[begin + i] + way[i] / flux;
      if (at > toH) continue;
      const later = passingAt(second, at, GAP_H);
      if (Number.isNaN(later)) continue;
      const now = first.tempC[begin + i];
      squares += (later - now) ** 2;
      sum += now;
      sumSquares += now * now;
      count += 1;
    }
    if (count < LEAST_MATCHES || count < LEAST_PART * way.length) return null;
    const variance = sumSquares / count - (sum / count) ** 2;
    if (variance < LEAST_SD_K ** 2) return null;
    return { part: squares / count / variance, mean: squares / count, count };
  };
  let best: { flux: number; part: number; mean: number; count: number } | null = null;
  for (let flux = MOST_FLUX; flux >= LEAST_FLUX; flux /= STEP) {
    const found = misfit(flux);
    if (found !== null && (best === null || found.part < best.part)) best = { flux, ...found };
  }
  if (best === null) return null;
  const bowl = bowlOf(best.flux, misfit, delayH(way, best.flux));
  if (bowl === null) return null;
  const scatter = Math.max(best.part, (best.part / best.mean) * LEAST_MISFIT_K ** 2);
  return {
    fluxKgM2S: best.flux / bowl.at,
    logSd: Math.sqrt((2 * scatter * TOGETHER) / (bowl.curve * best.count)) / bowl.at,
    likeness: 1 - best.part,
  };
}

function delayH(way: Float64Array, flux: number): number {
  return way.reduce((sum, one) => sum + one, 0) / way.length / flux;
}

/**
 * The bottom of the misfit over the delay, as a part of the delay at the best of the airflows tried: a parabola through several of them
 * by least squares, so that noise does not choose the bottom. Null where there is no bottom.
 */
function bowlOf(
  flux: number,
  misfit: (flux: number) => { part: number } | null,
  delay: number,
): { at: number; curve: number } | null {
  const half = Math.min(BOWL_MOST, Math.max(BOWL_LEAST, BOWL_H / delay));
  const points: { u: number; part: number }[] = [];
  for (let k = -BOWL_POINTS; k <= BOWL_POINTS; k++) {
    const u = (half * k) / BOWL_POINTS;
    const found = misfit(flux / (1 + u));
    if (found !== null) points.push({ u, part: found.part });
  }
  if (points.length < 2 * BOWL_POINTS) return null;
  const sum = (of: (point: { u: number; part: number }) => number) => points.reduce((total, one) => total + of(one), 0);
  const [n, s1, s2, s3, s4] = [0, 1, 2, 3, 4].map((power) => sum(({ u }) => u ** power));
  const [y0, y1, y2] = [0, 1, 2].map((power) => sum(({ u, part }) => part * u ** power));
  // Cramer's rule for part = c0 + c1 u + c2 u^2.
  const whole = n * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s3 * s2) + s2 * (s1 * s3 - s2 * s2);
  const c1 = (n * (y1 * s4 - s3 * y2) - y0 * (s1 * s4 - s3 * s2) + s2 * (s1 * y2 - y1 * s2)) / whole;
  const c2 = (n * (s2 * y2 - y1 * s3) - s1 * (s1 * y2 - y1 * s2) + y0 * (s1 * s3 - s2 * s2)) / whole;
  if (!(c2 > 0)) return null;
  const at = -c1 / (2 * c2);
  return Math.abs(at) > half ? null : { at: 1 + at, curve: 2 * c2 };
}
