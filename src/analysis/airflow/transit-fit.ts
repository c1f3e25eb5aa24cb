import { firstAt, type PassingCurve, passingAt } from './passing-curve.ts';

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
  const begin = firstAt(first, fromH);
  const end = firstAt(first, toH);
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
  const near = STEP ** 2;
  const more = misfit(best.flux * near);
  const less = misfit(best.flux / near);
  if (more === null || less === null || !(more.part > best.part) || !(less.part > best.part)) return null;
  // A parabola over the logarithm of the flux.
  const step = Math.log(near);
  const curve = (more.part - 2 * best.part + less.part) / step ** 2;
  const shift = (less.part - more.part) / (2 * step * curve);
  const scatter = Math.max(best.part, (best.part / best.mean) * LEAST_MISFIT_K ** 2);
  return {
    fluxKgM2S: best.flux * Math.exp(Math.max(-step, Math.min(step, shift))),
    logSd: Math.sqrt((2 * scatter * TOGETHER) / (curve * best.count)),
    likeness: 1 - best.part,
  };
}
