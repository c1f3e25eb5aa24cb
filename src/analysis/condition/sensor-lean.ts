import { Z95 } from '../../base/estimate.ts';
import type { BinMoisture, SensorShare } from '../types.ts';

/** How a sensor's moistures are taken: so much is taken off each, and so unsure the sensor's own error leaves them. */
export interface SensorLean {
  /** of a sensor, fraction; 0 where its start is not known */
  offWb(cable: string, sensor: number): number;
  /** standard error that is left of a sensor's fixed error, fraction */
  leftSdWb: number;
}

/** How far grain of one filling lies from its mean from place to place, sd, fraction: loads of a day part by about a point (working assumption). */
const USUAL_SPREAD = 0.007;
/** From so many sensors on their own spread tells it. */
const LEAST_SENSORS = 4;

/**
 * Of many sensors the one that reads wettest is the likeliest to read too much. What sensors differ by at the start is part grain,
 * part their fixed errors; the part that is error by the two variances is taken off (a mean shrunk by its own error, as Efron and
 * Morris shrink means).
 *
 * @param accuracyWb  limit that 95 % of sensors keep, fraction
 * @source            efron-morris-1975
 */
export function sensorLean({ shares }: Pick<BinMoisture, 'shares'>, accuracyWb: number): SensorLean {
  const told = shares.filter((one): one is SensorShare & { startWb: number } => one.startWb !== null);
  const weight = told.reduce((sum, one) => sum + one.share, 0);
  const mean = told.reduce((sum, one) => sum + one.share * one.startWb, 0) / weight;
  const errorVar = (accuracyWb / Z95) ** 2;
  const seenVar = told.reduce((sum, one) => sum + (one.startWb - mean) ** 2, 0) / Math.max(1, told.length - 1);
  const grainVar = told.length >= LEAST_SENSORS ? Math.max(0, seenVar - errorVar) : USUAL_SPREAD ** 2;
  const ofGrain = grainVar / (grainVar + errorVar);
  return {
    offWb(cable, sensor) {
      const one = told.find((other) => other.cable === cable && other.sensor === sensor);
      return one === undefined ? 0 : (1 - ofGrain) * (one.startWb - mean);
    },
    leftSdWb: Math.sqrt(ofGrain * errorVar),
  };
}
