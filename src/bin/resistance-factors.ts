import { assertRange } from '../base/errors.ts';

/** Packing as it fills a bin may raise the resistance by half. asae-d272-3, notes (read at the source) */
export const PACKING_FACTOR = 1.5;

/** Loose clean grain so damp that it is in balance with more than 85 % humidity: about 80 % of the curve. asae-d272-3, notes (read at the source) */
export const DAMP_GRAIN_FACTOR = 0.8;

/**
 * Multiplier for fines in shelled corn.
 *
 * @param finesFraction  mass of fines over mass of grain, 0 to 0.2
 * @param velocityMS     superficial velocity, m/s, 0.076 to 0.2
 * @returns              >= 1
 * @source               asae-d272-3, fines, after haque-1978; memory, borne out by nothing here
 * @valid                throws RangeError outside
 */
export function finesFactor(finesFraction: number, velocityMS: number): number {
  assertRange('finesFraction', finesFraction, 0, 0.2);
  assertRange('velocityMS', velocityMS, 0.076, 0.2);
  return 1 + (14.5566 - 26.418 * velocityMS) * finesFraction;
}
