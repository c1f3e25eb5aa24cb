import { median } from '../../base/stats/quantile.ts';
import { MOVING } from './fan-state.ts';
import { usualInterval } from './interval.ts';
import { type Run, resolutionOf, sameValueRuns } from './runs.ts';
import { HOUR_MS, type Track } from './track.ts';

/** Outdoor air never keeps one value for two days and nights; 24 readings so that slow logs don't count few. */
export const STUCK_AIR_MS = 48 * HOUR_MS;
export const STUCK_AIR_READINGS = 24;
/** Fog and rain hold 100 % longer: three days, and then only if the temperature moved meanwhile. */
export const STUCK_SATURATED_MS = 72 * HOUR_MS;
export const SATURATED_RH = 0.985;
export const STUCK_WITNESS_K = 8;
export const STUCK_WITNESS_RH = 0.3;
/** Plenum air with the fan off may stand for days at a coarse sensor's steps; so the fan must have run this long, or the steps be fine. */
export const STUCK_PLENUM_FAN_MS = 12 * HOUR_MS;
export const FINE_STEP_K = 0.12;
export const FINE_STEP_RH = 0.002;

/** Range of a track within a span, a twentieth cut off either end; 0 where there is too little. */
function rangeWithin(track: Track, fromMs: number, toMs: number): number {
  const values: number[] = [];
  for (let i = 0; i < track.timeMs.length; i++) {
    if (track.use[i] && track.timeMs[i] >= fromMs && track.timeMs[i] <= toMs) values.push(track.values[i]);
  }
  if (values.length < 4) return 0;
  values.sort((a, b) => a - b);
  const cut = Math.floor(values.length / 20);
  return values[values.length - 1 - cut] - values[cut];
}

/** Stuck runs of outdoor temperature. */
export function stuckOutdoorTemp(temp: Track): Run[] {
  return sameValueRuns(temp, STUCK_AIR_MS, STUCK_AIR_READINGS);
}

/** Stuck runs of outdoor humidity; saturated air needs longer, and a temperature that moved. */
export function stuckOutdoorRh(rh: Track, temp: Track): Run[] {
  return sameValueRuns(rh, STUCK_AIR_MS, STUCK_AIR_READINGS).filter(
    (run) =>
      run.value < SATURATED_RH ||
      (run.toMs - run.fromMs >= STUCK_SATURATED_MS && rangeWithin(temp, run.fromMs, run.toMs) >= STUCK_WITNESS_K),
  );
}

/**
 * Stuck runs of a plenum's temperature or humidity: the outdoor air moved meanwhile, and the fan drew it in or the sensor's steps are fine.
 *
 * @param air      what the bin's fans did, STILL, MOVING or UNKNOWN, [readings of the track]
 * @param outdoor  the same quantity outdoors; null where there is no weather
 */
export function stuckPlenum(
  track: Track,
  air: ArrayLike<number>,
  outdoor: Track | null,
  limits: { witness: number; fineStep: number; saturated: number },
): Run[] {
  const runs = sameValueRuns(track, STUCK_AIR_MS, STUCK_AIR_READINGS);
  if (runs.length === 0 || outdoor === null) return [];
  const resolution = resolutionOf(track);
  return runs.filter((run) => {
    if (rangeWithin(outdoor, run.fromMs, run.toMs) < limits.witness) return false;
    const fine = resolution > 0 && resolution <= limits.fineStep && run.value < limits.saturated;
    return fine || movingMs(track.timeMs, air, run.first, run.last) >= STUCK_PLENUM_FAN_MS;
  });
}

/** How long the fan ran within positions first to last. */
function movingMs(timeMs: ArrayLike<number>, air: ArrayLike<number>, first: number, last: number): number {
  let total = 0;
  for (let i = first; i < last; i++) if (air[i] === MOVING) total += Math.min(6 * HOUR_MS, timeMs[i + 1] - timeMs[i]);
  return total;
}

/** A working pressure sensor shows the fan: runs of one value through which the fan both ran and stood. */
export function stuckPressure(pressure: Track, air: ArrayLike<number>): Run[] {
  return sameValueRuns(pressure, STUCK_AIR_MS, STUCK_AIR_READINGS).filter((run) => {
    const ran = movingMs(pressure.timeMs, air, run.first, run.last);
    return ran >= STUCK_PLENUM_FAN_MS && run.toMs - run.fromMs - ran >= STUCK_PLENUM_FAN_MS;
  });
}

/** Median distance of a track from another, taken at the latest time of the other at or before its own. */
export function medianApart(track: Track, other: Track, of: (value: number) => number = (value) => value): number {
  return median(differences(track, other, of).map(Math.abs));
}

/** How far a track strays from a constant distance to another, in the median: 0 where it moves as the other does. */
export function medianStray(track: Track, other: Track): number {
  const apart = differences(track, other, (value) => value);
  const usual = median(apart);
  return median(apart.map((one) => Math.abs(one - usual)));
}

function differences(track: Track, other: Track, of: (value: number) => number): number[] {
  const apart: number[] = [];
  const reach = Math.max(3 * usualInterval(other.timeMs), HOUR_MS);
  let j = 0;
  for (let i = 0; i < track.timeMs.length; i++) {
    while (j + 1 < other.timeMs.length && other.timeMs[j + 1] <= track.timeMs[i]) j += 1;
    if (!track.use[i] || !other.use[j] || Math.abs(other.timeMs[j] - track.timeMs[i]) > reach) continue;
    apart.push(of(track.values[i]) - other.values[j]);
  }
  return apart;
}
