import { betweenReadings } from '../fronts/between-readings.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { AIR_MOVING, AIR_STILL, airAt, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { BinLog } from './bin-log.ts';

/** Every so many hours the log and the bed are held against each other. */
const READ_EVERY_H = 6;
/** A reading farther off than this, h, says nothing of the hour. */
const NEAR_H = 4;
/** After the fan stopped, the grain is looked at for so long, h, when the fit is judged. */
export const AFTER_H = 48;

/** What one cable showed, [hours read x sensors], row-major; NaN where it showed nothing. */
export interface CableSamples {
  sensors: number;
  tempC: Float64Array;
  moistureWb: Float64Array;
}

export interface FitSamples {
  /** hours at whose end the log is read */
  readHours: number[];
  /** by cable */
  cables: readonly CableSamples[];
  /** [hours read]: fan on then; fan on within the 48 hours before */
  moving: Uint8Array;
  near: Uint8Array;
  /** [hours read]: fan hours since the start */
  fanHours: Float64Array;
}

export function fitSamples(log: BinLog): FitSamples {
  const { count, startMs, fan, cables } = log;
  const readHours: number[] = [];
  for (let hour = READ_EVERY_H - 1; hour < count; hour += READ_EVERY_H) readHours.push(hour);
  const atMs = Float64Array.from(readHours, (hour) => startMs + (hour + 1) * HOUR_MS);
  const spans = log.review.fan.spans.state.length === 0 ? null : log.review.fan.spans;
  const air = airAt(spans, atMs);
  const ran = runSums(fan.on);
  return {
    readHours,
    cables: cables.map(({ sensors }) => {
      const temps = sensors.map((one) => near(one.temperature, atMs));
      const moistures = sensors.map((one) =>
        one.moisture === null
          ? new Float64Array(atMs.length).fill(Number.NaN)
          : near(one.moisture, atMs).map((wb, i) =>
              air[i] === AIR_MOVING || air[i] === AIR_STILL || spans === null ? wb : Number.NaN,
            ),
      );
      return { sensors: sensors.length, tempC: byHour(temps, atMs.length), moistureWb: byHour(moistures, atMs.length) };
    }),
    moving: Uint8Array.from(readHours, (hour) => (fan.on[hour] > 0.5 ? 1 : 0)),
    near: Uint8Array.from(readHours, (hour) => (ran[hour + 1] - ran[Math.max(0, hour + 1 - AFTER_H)] > 0.01 ? 1 : 0)),
    fanHours: Float64Array.from(readHours, (hour) => ran[hour + 1]),
  };
}

/** Fan hours before each hour, [hours + 1]. */
function runSums(on: Float64Array): Float64Array {
  const sums = new Float64Array(on.length + 1);
  for (let hour = 0; hour < on.length; hour++) sums[hour + 1] = sums[hour] + on[hour];
  return sums;
}

function near({ timeMs, value }: SensorReadings, atMs: Float64Array): Float64Array {
  return betweenReadings(timeMs, value, atMs, NEAR_H * HOUR_MS);
}

function byHour(sensors: readonly Float64Array[], hours: number): Float64Array {
  return Float64Array.from({ length: hours * sensors.length }, (_, i) => {
    const sensor = i % sensors.length;
    return sensors[sensor][(i - sensor) / sensors.length];
  });
}
