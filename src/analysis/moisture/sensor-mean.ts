import { firstNotBefore } from '../../base/first-not-before.ts';
import { trimmedMean } from '../../base/stats/quantile.ts';
import type { Span } from '../types.ts';
import { AIR_MOVING, AIR_STILL, type SensorReadings } from './sensor-readings.ts';

/** Spikes that slipped through the checks fall into this share, left out at each end. */
const TRIM = 0.1;

/** One sensor over one day. */
export interface SensorMean {
  /** NaN where there is no reading */
  value: number;
  readings: number;
  /** scatter of a single reading: from the steps between neighbouring readings, so that a slow swing does not count; NaN under 3 */
  noiseSd: number;
  /** mean of the readings taken while the fan ran; NaN where there is none */
  moving: number;
  /** share of the readings counted in `value` that were not taken in still air, as far as anybody knows */
  unsettledShare: number;
}

/** Mean of a sensor within a span; with `stillOnly` of its still-air readings. */
export function sensorMean(sensor: SensorReadings, span: Span, stillOnly: boolean): SensorMean {
  const used: number[] = [];
  const moving: number[] = [];
  let unsettled = 0;
  for (
    let i = firstNotBefore(sensor.timeMs, span.fromMs);
    i < sensor.timeMs.length && sensor.timeMs[i] < span.toMs;
    i++
  ) {
    const isMoving = sensor.air[i] === AIR_MOVING;
    if (isMoving) moving.push(sensor.value[i]);
    if (stillOnly && sensor.air[i] !== AIR_STILL) continue;
    used.push(sensor.value[i]);
    if (sensor.air[i] !== AIR_STILL) unsettled += 1;
  }
  const steps = used.slice(1).map((value, i) => (value - used[i]) ** 2);
  return {
    value: trimmedMean(used, TRIM),
    readings: used.length,
    noiseSd: steps.length < 2 ? Number.NaN : Math.sqrt(steps.reduce((sum, one) => sum + one, 0) / steps.length / 2),
    moving: trimmedMean(moving, TRIM),
    unsettledShare: used.length === 0 ? 0 : unsettled / used.length,
  };
}
