import { Z95 } from '../../base/estimate.ts';
import type { PlacedSensor } from '../../bin/shares.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import type { CablePoints } from './cable-points.ts';
import { type CableSpread, joinSpreads, ownSpread } from './cable-spread.ts';
import { type ErrorPart, joinErrors } from './error-part.ts';
import { heightError } from './height-error.ts';
import { BEYOND_CABLES, radialError } from './radial-error.ts';
import { ACCURACY, BIAS } from './reading-parts.ts';

/** Where season.yaml states no limit: fixed error of a sensor and error that a bin's sensors share, K that 95 % keep. From memory of data sheets. */
export const ASSUMED_ACCURACY_K = 0.5;
export const ASSUMED_BIAS_K = 0.3;
/** Places at one distance from the centre differ by about this (sd, K), held as firmly as three degrees of freedom. Working assumption. */
const ASSUMED_CABLES: CableSpread = { variance: 0.5 ** 2, df: 3 };

/** A sensor with its mean temperature at a moment, C. */
export interface PlacedTemperature extends PlacedSensor {
  tempC: number;
}

/** Standard errors of the bin's mean temperature by cause, K, without the edges that no sensor sees. */
export function temperatureParts(
  rows: readonly PlacedTemperature[],
  depthM: number,
  diameterM: number,
  errors: SensorErrors['temperature'],
  air: Bin['air'],
): ErrorPart[] {
  const firm = Number.POSITIVE_INFINITY;
  const together = Math.sqrt(rows.reduce((sum, row) => sum + row.share ** 2, 0));
  const cables = cableMeans(rows);
  const temps = rows.map((row) => row.tempC);
  const range = Math.max(1, Math.max(...temps) - Math.min(...temps));
  const spread = joinSpreads([ASSUMED_CABLES, ownSpread(cables, 1)]);
  const weights = Math.sqrt(cables.reduce((sum, one) => sum + one.weight ** 2, 0));
  // The error between heights knows changes in percent: one percent stands for one K here.
  const levels = rows.map((row) => ({ ...row, startWb: row.tempC / 100, endWb: 0 }));
  return [
    { cause: ACCURACY, sd: ((errors.accuracyK ?? ASSUMED_ACCURACY_K) / Z95) * together, df: firm },
    { cause: BIAS, sd: (errors.biasK ?? ASSUMED_BIAS_K) / Z95, df: firm },
    { cause: 'spread between cables', sd: Math.sqrt(spread.variance) * weights, df: spread.df },
    { cause: 'fronts between the heights of the sensors', sd: heightError(levels, depthM, range, air), df: firm },
    { cause: BEYOND_CABLES, sd: radialError(cables, diameterM / 2, range), df: firm },
  ];
}

/**
 * The 90 % interval of the mean: the parts' errors either way, and on either side as far as the unseen edges may pull.
 *
 * @param edges  least and most by which each edge may move the mean, K
 */
export function temperatureInterval(
  valueC: number,
  parts: readonly ErrorPart[],
  edges: readonly (readonly [number, number])[],
): [number, number] {
  const { half90 } = joinErrors(parts);
  const least = edges.reduce((sum, [low]) => sum + low, 0);
  const most = edges.reduce((sum, [, high]) => sum + high, 0);
  return [valueC - half90 + Math.min(0, least), valueC + half90 + Math.max(0, most)];
}

function cableMeans(rows: readonly PlacedTemperature[]): CablePoints[] {
  return [...new Set(rows.map((row) => row.cable))].map((cable) => {
    const own = rows.filter((row) => row.cable === cable);
    return {
      cable,
      points: own.reduce((sum, row) => sum + row.heightShare * row.tempC, 0),
      weight: own[0].cableShare,
      fromCentreM: own[0].fromCentreM,
    };
  });
}
