import { firstNotBefore } from '../../base/first-not-before.ts';
import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';
import { AIR_MOVING, AIR_STILL, type SensorReadings } from './sensor-readings.ts';

const HOUR_MS = 3_600_000;
/** Compared: the last hours of a run with the first hours of still air after it. */
const COMPARED_HOURS = 6;
/** With fewer stops in the log than this, the assumed error is used. */
const LEAST_STOPS = 3;
/**
 * Error of a bin's mean moisture read in moving air: sd, points. Stops later in the log may show more, not less: they come
 * when grain and air have nearly settled, and a start read while the first front of evaporation crosses the bin was off
 * by 0.1 to 0.7 point (root mean square 0.4) in seven simulated bins of two generators, where the stops told 0.1.
 */
export const ASSUMED_MOVING_AIR_SD = 0.4;

/**
 * How far the bin's mean moisture leans while the fan runs, from the log itself: at each stop of the fan, the mean of
 * the run's last six hours less that of the first six hours of still air; the root mean square over all stops, where it is
 * more than the assumed error.
 *
 * @param shareOf  share of the grain of each sensor, [sensors]
 * @returns        sd in points, at least the assumed one, and how many stops tell of it
 */
export function movingAirError(
  sensors: readonly SensorReadings[],
  shareOf: readonly number[],
  spans: FanSpans | null,
): { sd: number; stops: number } {
  const leans: number[] = [];
  for (let i = 0; spans !== null && i + 1 < spans.state.length; i++) {
    if (spans.state[i] !== FAN_ON || spans.state[i + 1] !== FAN_OFF) continue;
    const stop = spans.endMs[i];
    let lean = 0;
    let weight = 0;
    sensors.forEach((sensor, s) => {
      const moving = meanOf(sensor, stop - COMPARED_HOURS * HOUR_MS, stop, AIR_MOVING);
      const still = meanOf(sensor, stop, Math.min(spans.endMs[i + 1], stop + 2 * COMPARED_HOURS * HOUR_MS), AIR_STILL);
      if (Number.isNaN(moving - still)) return;
      lean += shareOf[s] * 100 * (moving - still);
      weight += shareOf[s];
    });
    if (weight > 0.5) leans.push(lean / weight);
  }
  if (leans.length < LEAST_STOPS) return { sd: ASSUMED_MOVING_AIR_SD, stops: leans.length };
  const seen = Math.sqrt(leans.reduce((sum, one) => sum + one * one, 0) / leans.length);
  return { sd: Math.max(ASSUMED_MOVING_AIR_SD, seen), stops: leans.length };
}

function meanOf(sensor: SensorReadings, fromMs: number, toMs: number, air: number): number {
  let sum = 0;
  let count = 0;
  for (let i = firstNotBefore(sensor.timeMs, fromMs); i < sensor.timeMs.length && sensor.timeMs[i] < toMs; i++) {
    if (sensor.air[i] !== air) continue;
    sum += sensor.value[i];
    count += 1;
  }
  return count === 0 ? Number.NaN : sum / count;
}
