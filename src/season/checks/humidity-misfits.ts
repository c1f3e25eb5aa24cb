import { relativeHumidity } from '../../air/humidity.ts';
import { LIMITS } from './limits.ts';
import { type Track, used } from './track.ts';

/** Real errors stand farther off than rounding to 0.1 °C and whole percents can bring (seen in the public files of three airports). */
export const MISFIT_RH = 0.03;
/** More rows than this are another habit of the station (a dew point over ice), no slips. */
export const MISFIT_MOST = 0.02;

/** Of humidity per kelvin of temperature or dew point, at most: d ln(pws)/dT near 0 °C (ASHRAE Fundamentals 2017 ch. 1 table 3). */
const SLOPE_PER_K = 0.075;

const WHOLE = 0.02;
const isWhole = (value: number) => Math.abs(value - Math.round(value)) < WHOLE;

/** Half of the step in which the two temperatures of a row are given: whole °C (of either: reports mix them, and the humidity may come from whole ones), whole °F or tenths. */
function roundingK(tempC: number, dewC: number): number {
  if (isWhole(tempC) || isWhole(dewC)) return 0.5;
  if (isWhole(tempC * 1.8 + 32) && isWhole(dewC * 1.8 + 32)) return 0.5 / 1.8;
  return 0.05;
}

/**
 * Rows whose humidity is not the one that temperature and dew point give, over water also in frost, as archives have it.
 *
 * @param dewC  [readings], NaN is missing
 * @returns     how many rows have all three, and the positions of those that do not fit
 */
export function humidityMisfits(temp: Track, rh: Track, dewC: Float64Array): { compared: number; at: number[] } {
  const at: number[] = [];
  let compared = 0;
  for (const i of used(temp)) {
    if (!rh.use[i] || !(dewC[i] >= LIMITS.tempC[0] && dewC[i] <= LIMITS.tempC[1])) continue;
    compared += 1;
    const due = relativeHumidity(temp.values[i], dewC[i]);
    const room = MISFIT_RH + 2 * roundingK(temp.values[i], dewC[i]) * SLOPE_PER_K * due;
    // Wet sensors overshoot 100 %, dew points do not.
    if (Math.abs(Math.min(rh.values[i], 1) - Math.min(due, 1)) > room) at.push(i);
  }
  return { compared, at };
}
