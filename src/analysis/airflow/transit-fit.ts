import { bestTransit } from './best-transit.ts';
import { carriedTemperature } from './carried-temperature.ts';
import { hourlyPassing, thinnedPassing } from './hourly-passing.ts';
import type { PassingCurve } from './passing-curve.ts';
import { spreadArrivals } from './spread-arrivals.ts';
import { type OnTheWay, startProfile } from './start-profile.ts';

/** Airflow that carries what one sensor saw to the next one. */
export interface TransitFit {
  /** dry air, kg/(s m2) */
  fluxKgM2S: number;
  /** standard error of its logarithm */
  logSd: number;
  /** part of the variance at the second sensor that the first one explains, 1 at best */
  likeness: number;
}

/** How a temperature moves up: `ratioAt` dry grain that it passes for each kg of dry air (kg/kg), the bed's dry matter kg/m3. */
export interface Carriage {
  ratioAt: (tempC: number) => number;
  dryMatterKgM3: number;
}

/** A stretch of fan hours, and where the running began that it is a part of. */
export interface Stretch {
  fromH: number;
  toH: number;
  runFromH: number;
}

/** From 0.01 to 4 cfm/bu in a bed of 6 m; step 10 %. */
const LEAST_FLUX = 0.0008;
const MOST_FLUX = 0.6;
const STEP = 1.1;
/** Moments at the second sensor that must be told. */
const LEAST_MATCHES = 6;
/** The temperature must have moved: its standard deviation at the second sensor, K. */
const LEAST_SD_K = 0.7;
/** Readings farther apart than this, fan hours, are not joined by a line. */
const GAP_H = 9;
/** Mean times on the way that can be found: this much of the run at the most, and no less than a quarter of an hour. */
const MOST_DELAY = 0.5;
const LEAST_DELAY_H = 0.25;
/** The fit may leave the best of the airflows tried first by so much (logarithm). */
const ASTRAY = 0.7;

/**
 * The airflow that carries the temperatures of the first sensor to the second: later by the fan hours that balances of heat and
 * water give, warm grain faster than cool grain, and spread on the way by what the two logs show. Spread alone shifts the
 * crests of daily waves, by a tenth and more of their time; the mean time is what the balances tell. The fixed errors of the two
 * sensors are taken out as far as thermometers have them: in a steady fall they look like a delay.
 *
 * @param first, second  from where the air enters on
 * @param distanceM      between them, > 0
 * @param between        sensors on the way
 * @returns              null where nothing moved, the readings are too few, or no airflow in reach fits better than its neighbours
 */
export function transitFit(
  first: PassingCurve,
  second: PassingCurve,
  distanceM: number,
  { fromH, toH, runFromH }: Stretch,
  { ratioAt, dryMatterKgM3 }: Carriage,
  between: readonly OnTheWay[] = [],
): TransitFit | null {
  const seen = thinnedPassing(second, fromH, toH);
  const count = seen.tempC.length;
  if (count < LEAST_MATCHES) return null;
  const meanC = seen.tempC.reduce((sum, tempC) => sum + tempC, 0) / count;
  const variance = seen.tempC.reduce((sum, tempC) => sum + (tempC - meanC) ** 2, 0) / count;
  if (variance < LEAST_SD_K ** 2) return null;
  const sourceC = hourlyPassing(first, runFromH, toH, GAP_H);
  const beginC = startProfile(first, second, between, runFromH, GAP_H);
  if (beginC === null || Number.isNaN(sourceC[0])) return null;
  /** hours times flux at a temperature */
  const way = (tempC: number) => (distanceM * dryMatterKgM3) / ratioAt(tempC) / 3600;
  const meanWay = way(meanC);
  const carried = { sourceC, pace: sourceC.map((tempC) => way(tempC) / meanWay), beginC };
  const hours = seen.fanHour.map((hour) => hour - runFromH);
  const told = new Float64Array(count);
  const predict = (logFlux: number, logSpread: number) => {
    carriedTemperature(carried, hours, meanWay / Math.exp(logFlux), spreadArrivals(Math.exp(logSpread)), told);
    return told;
  };
  const tries: number[] = [];
  for (let flux = MOST_FLUX; flux >= LEAST_FLUX; flux /= STEP) {
    const delayH = meanWay / flux;
    if (delayH > MOST_DELAY * (toH - runFromH)) break;
    if (delayH >= LEAST_DELAY_H) tries.push(Math.log(flux));
  }
  const best = bestTransit(predict, seen.tempC, toH - fromH, tries);
  if (best === null || Math.abs(best.logFlux - best.triedLogFlux) > ASTRAY) return null;
  return { fluxKgM2S: Math.exp(best.logFlux), logSd: best.logSd, likeness: 1 - best.meanSquare / variance };
}
