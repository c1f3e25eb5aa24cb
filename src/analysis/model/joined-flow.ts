import { Z90 } from '../../base/estimate.ts';
import { CORE_RADIUS } from '../moisture/radial-error.ts';
import type { BinLog } from './bin-log.ts';

/**
 * Airflow at one place of a bin over its mean, relative standard error (common practice: fines under the spreader); cables average it.
 */
const PLACE_REL_SD = 0.11;
/** Where all cables hang in the core: it lacks a fifth of the air where fines gather, or nothing, or a half (common practice). */
const CORE_LACK = 0.1;
const CORE_REL_SD = 0.18;

/** The airflow of a whole bin, natural logarithms of m3/s. */
export interface JoinedFlow {
  mean: number;
  sd: number;
  /** of the bin's mean over the air at its cables: what static pressure and the place of the cables say, and its standard error */
  place: number;
  placeSd: number;
  /** without the static pressure: by the air at the cables and what is usual of their place */
  alone: { mean: number; sd: number };
}

/**
 * From the air at the cables to that of the bin: what cables do not see (the air between them) the static pressure tells, within what
 * the grain's resistance leaves open. Each weighs by its errors.
 *
 * @param mean  logarithm of the airflow at the cables
 * @param sd    its standard error, dry matter and heat of the grain included
 */
export function joinedFlow({ bin, cables, review }: BinLog, mean: number, sd: number): JoinedFlow {
  const inCore = cables.every(({ cable }) => {
    const { fromCentreM } = bin.cables.find((one) => one.id === cable)!;
    return fromCentreM <= (CORE_RADIUS * bin.diameterM) / 2;
  });
  const usual = inCore ? CORE_LACK : 0;
  const usualSd = inCore ? CORE_REL_SD : PLACE_REL_SD / Math.sqrt(cables.length);
  const alone = { mean: mean + usual, sd: Math.hypot(sd, usualSd) };
  const { value, interval } = review.airflow.byPressure;
  if (value === null || interval === null || !(value > 0)) return { ...alone, place: usual, placeSd: usualSd, alone };
  // Not its value: where two sets of constants speak that is the one set's, at an end of what both leave open.
  const [low, high] = interval.map(Math.log);
  const pressure = (low + high) / 2;
  const pressureVariance = ((high - low) / 2 / Z90) ** 2;
  const aloneVariance = alone.sd ** 2;
  const all = aloneVariance + pressureVariance;
  const moved = ((pressure - alone.mean) * aloneVariance) / all;
  return {
    mean: alone.mean + moved,
    sd: Math.sqrt((aloneVariance * pressureVariance) / all),
    // Of what the pressure moves, the air between the cables has the part that its own error is of both.
    place: usual + (moved * usualSd ** 2) / aloneVariance,
    placeSd: usualSd * Math.sqrt(1 - usualSd ** 2 / all),
    alone,
  };
}
