import type { BinLog } from './bin-log.ts';
import { blowerOf } from './blower-of.ts';
import { fansPower } from './fans-power.ts';

/** A thermometer, of the plenum or outdoors: half a degree that 95 % keep. */
const THERMOMETER_K = 0.25;
/**
 * Where no plenum tells it: what part of the power warms the air, and how the power is known; by its nameplate less, and of a fan that
 * blows into other bins too hardly. Working assumptions.
 */
const WARMING_REL_SD = 0.15;
const BY_NAMEPLATE_REL_SD = 0.25;
const SHARED_REL_SD = 0.4;
/** Air drawn down comes from under the roof, of which no log tells. Working assumption. */
const UNDER_ROOF_K = 1.2;

/**
 * How far the air that enters the grain may be from what log and fans say, standard error, K.
 *
 * @param flowM3S  airflow by which the fans' power warms it where no plenum tells
 */
export function enteringSdK(log: BinLog, flowM3S: number): number {
  if (log.bin.air === 'down') return UNDER_ROOF_K;
  if (log.warmingK !== null) return THERMOMETER_K;
  const { warmingK, heaterK } = blowerOf(log, flowM3S, log.depthM);
  const { shared, byNameplate } = fansPower(log);
  const relSd = shared ? SHARED_REL_SD : byNameplate ? BY_NAMEPLATE_REL_SD : WARMING_REL_SD;
  return Math.hypot(THERMOMETER_K, relSd * (warmingK + heaterK));
}
