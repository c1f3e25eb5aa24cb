import type { BinLog } from './bin-log.ts';
import { blowerOf } from './blower-of.ts';

/** A thermometer, of the plenum or outdoors: half a degree that 95 % keep. */
const THERMOMETER_K = 0.25;
/** Where no plenum tells it: what part of the power warms the air, and how the power is known. Working assumption. */
const WARMING_REL_SD = 0.15;
/** Air drawn down comes from under the roof, of which no log tells. Working assumption. */
const UNDER_ROOF_K = 1.2;

/**
 * How far the air that enters the grain may be from what log and fans say, standard error, K.
 *
 * @param flowM3S  airflow by which the fans' power warms it where no plenum tells
 */
export function enteringSdK(log: BinLog, flowM3S: number): number {
  if (log.bin.air === 'down') return UNDER_ROOF_K;
  const { warmingK, heaterK } = blowerOf(log, flowM3S, log.depthM);
  if (log.warmingK === null) return Math.hypot(THERMOMETER_K, WARMING_REL_SD * (warmingK + heaterK));
  return THERMOMETER_K;
}
