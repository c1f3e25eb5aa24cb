import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { spanIndexAt, stillHoursAt } from '../fan/spans.ts';
import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';

/** Hours after which the air between the kernels counts as still and in balance with them. */
const STILL_HOURS = 2;

export const AIR_MOVING = 0;
export const AIR_SETTLING = 1;
export const AIR_STILL = 2;
const AIR_UNKNOWN = 3;

/** Believed readings of one sensor, in time order; every array is [readings]. */
export interface SensorReadings {
  cable: string;
  sensor: number;
  timeMs: Float64Array;
  /** moisture, wet basis, fraction, or temperature, C */
  value: Float64Array;
  /** AIR_MOVING while the fan runs, AIR_SETTLING in the first two hours after, then AIR_STILL; AIR_UNKNOWN */
  air: Uint8Array;
}

export type Measured = 'moisture' | 'temperature';

/**
 * The readings that count: of the bin's own sensors, in good standing (no flag of theirs set), within [fromMs, toMs).
 *
 * @param spans  the bin's fans; null where no log tells
 * @returns      one per sensor that has any
 */
export function believedReadings(
  bin: Bin,
  series: readonly SensorSeries[],
  what: Measured,
  spans: FanSpans | null,
  fromMs: number,
  toMs: number,
): SensorReadings[] {
  const heights = new Map(bin.cables.map((cable) => [cable.id, cable.sensorHeightsM.length]));
  return series
    .filter((one) => one.bin === bin.id && one.sensor >= 1 && one.sensor <= (heights.get(one.cable) ?? 0))
    .map((one) => {
      const values = what === 'moisture' ? one.moistureWb : one.tempC;
      const flags = what === 'moisture' ? one.moistureFlags : one.tempFlags;
      const kept: number[] = [];
      for (let i = 0; i < values.length; i++) {
        if (flags[i] !== 0 || !(one.timeMs[i] >= fromMs && one.timeMs[i] < toMs)) continue;
        if (what === 'moisture' ? values[i] > 0 && values[i] < 1 : !Number.isNaN(values[i])) kept.push(i);
      }
      const timeMs = Float64Array.from(kept, (i) => one.timeMs[i]);
      const value = Float64Array.from(kept, (i) => values[i]);
      return { cable: one.cable, sensor: one.sensor, timeMs, value, air: airAt(spans, timeMs) };
    })
    .filter((one) => one.timeMs.length > 0);
}

/** What the air did at each time, [times]. */
export function airAt(spans: FanSpans | null, timesMs: Float64Array): Uint8Array {
  if (spans === null) return new Uint8Array(timesMs.length).fill(AIR_UNKNOWN);
  const hours = stillHoursAt(spans, timesMs);
  return Uint8Array.from(hours, (still, i) => {
    if (still === 0 && stateAt(spans, timesMs[i]) === FAN_ON) return AIR_MOVING;
    if (!Number.isNaN(still)) return still >= STILL_HOURS ? AIR_STILL : AIR_SETTLING;
    // After a gap in the fan's log nobody knows when it stopped, but once seen off for two hours the air is still.
    const index = spanIndexAt(spans, timesMs[i]);
    if (spans.state[index] !== FAN_OFF) return AIR_UNKNOWN;
    return timesMs[i] - spans.startMs[index] >= STILL_HOURS * 3_600_000 ? AIR_STILL : AIR_UNKNOWN;
  });
}

function stateAt(spans: FanSpans, ms: number): number {
  return spans.state[spanIndexAt(spans, ms)];
}
