import { quantileOf, usualInterval } from './interval.ts';
import { HOUR_MS, type Track, used } from './track.ts';

/** Readings that a spike may last; longer is a level, and a front never comes back. */
export const SPIKE_READINGS = 3;
/** Least height of a spike. Grain holds about 1.3 MJ/m3K and cannot go 5 K out and back within readings; outdoor air and a plenum whose fan starts can do more. */
export const SPIKE_GRAIN_K = 5;
export const SPIKE_OUTDOOR_K = 10;
export const SPIKE_PLENUM_K = 15;
/** Two points; a cable's moisture leans that far and back when a fan starts and stops, so while the fan changes it takes more. */
export const SPIKE_MOISTURE_WB = 0.02;
export const SPIKE_MOISTURE_FAN_WB = 0.05;
/** without a fan log */
export const SPIKE_MOISTURE_UNKNOWN_WB = 0.03;
/** With long steps and the fan running, a day's wave can look like a spike. */
export const SPIKE_GRAIN_COARSE_K = 12;
export const SPIKE_COARSE_MS = 2 * HOUR_MS;
/** A spike's steps are this many times those that nine in ten of the sensor's steps keep, over the log and over the days around. */
export const SPIKE_TIMES_USUAL = 3;
const USUAL_SHARE = 0.9;
/** After a spike the reading is back to within this share of its height. */
const SPIKE_RETURN = 0.5;
/** steps before and after that say what is usual around a reading */
const AROUND = 60;

/**
 * Readings that leave and come back within SPIKE_READINGS. Positions, rising.
 *
 * @param floor  least height at a position, in the track's unit
 */
export function spikes(track: Track, floor: (position: number, first: number, last: number) => number): number[] {
  let at = [...used(track)];
  const found: number[] = [];
  if (at.length < 5) return found;
  const { timeMs, values } = track;
  const interval = usualInterval(timeMs);
  // Wide ones first would swallow narrow ones beside each other; narrow ones are taken out before wider are sought.
  for (let width = 1; width <= SPIKE_READINGS; width++) {
    const steps = new Float64Array(at.length);
    for (let k = 1; k < at.length; k++) steps[k] = Math.abs(values[at[k]] - values[at[k - 1]]);
    const season = quantileOf(Float64Array.from(steps.subarray(1)).sort(), USUAL_SHARE);
    const out = new Set<number>();
    for (let k = 1; k + width < at.length; k++) {
      const before = values[at[k - 1]];
      const after = values[at[k + width]];
      // The cheap look first: nearly every reading ends here.
      const enter = steps[k];
      const leave = steps[k + width];
      const least = floor(at[k], at[k - 1], at[k + width]);
      if (!(enter >= least && leave >= least)) continue;
      if (timeMs[at[k + width]] - timeMs[at[k - 1]] > (width + 3) * interval) continue;
      let height = Number.POSITIVE_INFINITY;
      for (let j = k; j < k + width; j++) {
        height = Math.min(height, Math.abs(values[at[j]] - before), Math.abs(values[at[j]] - after));
      }
      if (height < least || Math.abs(after - before) > SPIKE_RETURN * height) continue;
      const around = Float64Array.from(steps.subarray(Math.max(1, k - AROUND), k + width + AROUND)).sort();
      const usual = Math.max(season, quantileOf(around, USUAL_SHARE));
      if (Math.min(enter, leave) < SPIKE_TIMES_USUAL * usual) continue;
      for (let j = k; j < k + width; j++) out.add(at[j]);
      k += width;
    }
    if (out.size === 0) continue;
    found.push(...out);
    at = at.filter((i) => !out.has(i));
  }
  return found.sort((a, b) => a - b);
}
