import { firstNotBefore } from '../../base/first-not-before.ts';
import { likelyHours } from '../moisture/moment-window.ts';
import { ASSUMED_MOVING_AIR_SD } from '../moisture/moving-air-error.ts';
import { ASSUMED_NOISE_SD } from '../moisture/reading-parts.ts';
import { AIR_MOVING, AIR_SETTLING, AIR_STILL, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { FanSpans } from '../types.ts';
import type { ProbeAir } from './probe-types.ts';

const HOUR_MS = 3_600_000;
/** Still-air readings up to this far from the sample may stand for it, with at most so many fan hours in between. */
const FAR_HOURS = 48;
const MOST_FAN_HOURS = 3;
/** A single sensor leans more towards the passing air than the bin's mean does (working assumption). */
const LEAN = 2;

/** What one sensor said around a moment. */
export interface ReadingAt {
  value: number;
  air: ProbeAir;
  /** of the mean, points */
  sd: number;
}

/**
 * Mean of a sensor around [fromMs, toMs]: of still-air readings in it, else of still-air readings up to two days off with
 * next to no fan hours between, else of all readings in it.
 *
 * @returns null where there is none
 */
export function readingAt(
  sensor: SensorReadings,
  spans: FanSpans | null,
  fromMs: number,
  toMs: number,
): ReadingAt | null {
  const near = meanOf(sensor, fromMs, toMs, true);
  if (near.count > 0) return told(near, 'still');
  if (spans !== null) {
    const before = meanOf(sensor, fromMs - FAR_HOURS * HOUR_MS, fromMs, true);
    const after = meanOf(sensor, toMs, toMs + FAR_HOURS * HOUR_MS, true);
    const hours = (found: Mean) => likelyHours(spans, Math.min(found.lastMs, toMs), Math.max(found.firstMs, fromMs));
    const quiet = [before, after].filter((one) => one.count > 0 && hours(one) <= MOST_FAN_HOURS);
    if (quiet.length > 0) return told(quiet[0], 'still');
  }
  const any = meanOf(sensor, fromMs, toMs, false);
  return any.count === 0 ? null : told(any, any.moving ? 'moving' : 'unknown');
}

interface Mean {
  mean: number;
  count: number;
  firstMs: number;
  lastMs: number;
  /** some were read while the fan ran or had just stopped */
  moving: boolean;
}

function told({ mean, count }: Mean, air: ProbeAir): ReadingAt {
  const noise = ASSUMED_NOISE_SD / Math.sqrt(count);
  return { value: mean, air, sd: air === 'still' ? noise : Math.hypot(noise, LEAN * ASSUMED_MOVING_AIR_SD) };
}

function meanOf(sensor: SensorReadings, fromMs: number, toMs: number, stillOnly: boolean): Mean {
  let sum = 0;
  let count = 0;
  let firstMs = Number.NaN;
  let lastMs = Number.NaN;
  let moving = false;
  for (let i = firstNotBefore(sensor.timeMs, fromMs); i < sensor.timeMs.length && sensor.timeMs[i] < toMs; i++) {
    if (stillOnly && sensor.air[i] !== AIR_STILL) continue;
    sum += sensor.value[i];
    count += 1;
    moving ||= sensor.air[i] === AIR_MOVING || sensor.air[i] === AIR_SETTLING;
    if (count === 1) firstMs = sensor.timeMs[i];
    lastMs = sensor.timeMs[i];
  }
  return { mean: sum / count, count, firstMs, lastMs, moving };
}
