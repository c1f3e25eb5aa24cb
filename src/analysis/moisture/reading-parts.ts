import { Z95 } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import type { SensorErrors } from '../../season/season.ts';
import type { ErrorPart } from './error-part.ts';
import type { SensorMean } from './sensor-mean.ts';
import type { SensorRow } from './sensor-moments.ts';

/**
 * Drift of one sensor over a season, sd in points. Capacitive humidity sensors are usually sold with a long-term drift
 * under 0.5 to 1 % relative humidity a year (from memory of data sheets), near enough 0.1 to 0.2 point of grain moisture.
 */
export const DRIFT_SD = 0.1;
/** Where season.yaml states no limit: fixed error of a sensor and error shared by a bin's sensors, points that 95 % keep. */
export const ASSUMED_ACCURACY = 0.5;
export const ASSUMED_BIAS = 0.5;
/** Where neither season.yaml nor the readings tell: noise of a reading, sd in points. */
export const ASSUMED_NOISE_SD = 0.1;

/** Causes that others leave out or put theirs in place of. */
export const ACCURACY = 'accuracy of the sensors';
export const BIAS = 'bias that the sensors share';

type MoistureErrors = SensorErrors['moisture'];

/** Noise of the readings in the mean of the given moments; it does not cancel. */
export function noisePart(
  rows: readonly SensorRow[],
  moments: readonly ('start' | 'end')[],
  errors: MoistureErrors,
): ErrorPart {
  const scatter = median(rows.flatMap((row) => moments.map((moment) => 100 * row[moment].noiseSd)));
  const found = Number.isNaN(scatter) ? ASSUMED_NOISE_SD : scatter;
  const sd = errors.noiseWb === null ? found : (100 * errors.noiseWb) / Z95;
  const variance = rows.reduce(
    (sum, row) => sum + row.share ** 2 * moments.reduce((all, moment) => all + 1 / row[moment].readings, 0),
    0,
  );
  return { cause: 'noise of the readings', sd: sd * Math.sqrt(variance), df: Number.POSITIVE_INFINITY };
}

/** Drift of the sensors between the start and the end. */
export function driftPart(rows: readonly SensorRow[]): ErrorPart {
  return { cause: 'drift of the sensors', sd: DRIFT_SD * sharesTogether(rows), df: Number.POSITIVE_INFINITY };
}

/** Errors of the sensors that cancel between two readings of one sensor and count in full for a single moment. */
export function fixedParts(rows: readonly SensorRow[], errors: MoistureErrors): ErrorPart[] {
  const accuracy = errors.accuracyWb === null ? ASSUMED_ACCURACY : 100 * errors.accuracyWb;
  const bias = errors.biasWb === null ? ASSUMED_BIAS : 100 * errors.biasWb;
  return [
    { cause: ACCURACY, sd: (accuracy / Z95) * sharesTogether(rows), df: Number.POSITIVE_INFINITY },
    { cause: BIAS, sd: bias / Z95, df: Number.POSITIVE_INFINITY },
  ];
}

/** Weighted share of the readings that were not known to be in still air. */
export function unsettledShare(rows: readonly SensorRow[], moment: 'start' | 'end'): number {
  const of = (mean: SensorMean) => mean.unsettledShare;
  return rows.reduce((sum, row) => sum + row.share * of(row[moment]), 0);
}

function sharesTogether(rows: readonly SensorRow[]): number {
  return Math.sqrt(rows.reduce((sum, row) => sum + row.share ** 2, 0));
}
