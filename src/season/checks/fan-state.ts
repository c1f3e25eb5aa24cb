import { median } from '../../base/stats/quantile.ts';
import type { Fan } from '../../bin/fan.ts';
import { quantileOf, usualInterval } from './interval.ts';
import { HOUR_MS } from './track.ts';

export const STILL = 0;
export const MOVING = 1;
export const UNKNOWN = 2;

/** Grain near a fan that has just stopped still shows the fan's air for about this long. */
export const SETTLING_MS = 3 * HOUR_MS;

const WATT_PER_HP = 745.6999;

/** One fan's log in time order, [readings]; NaN is missing. */
export interface FanLog {
  time: Float64Array;
  current_a: Float64Array;
  power_w: Float64Array;
  energy_j: Float64Array;
  on: Float64Array;
  run_s: Float64Array;
}

/** Whether a fan ran, by sample, as far as the checks need it: STILL, MOVING or UNKNOWN, [readings]. */
export function fanSamples(fan: Pick<Fan, 'runningAboveA' | 'nameplateW' | 'supply'>, log: FanLog): Uint8Array {
  const currentAbove = fan.runningAboveA ?? splitAbove(log.current_a, nameplateAmps(fan));
  const powerAbove = splitAbove(log.power_w, fan.nameplateW);
  const out = new Uint8Array(log.time.length).fill(UNKNOWN);
  for (let i = 0; i < out.length; i++) {
    if (Number.isFinite(log.on[i])) out[i] = log.on[i] > 0.5 ? MOVING : STILL;
    else if (Number.isFinite(log.current_a[i])) out[i] = log.current_a[i] > currentAbove ? MOVING : STILL;
    else if (Number.isFinite(log.power_w[i])) out[i] = log.power_w[i] > powerAbove ? MOVING : STILL;
    else out[i] = byMeter(fan, log, i);
  }
  return out;
}

/** Full-load current by the nameplate, A; 0 where the supply is not stated. */
export function nameplateAmps(fan: Pick<Fan, 'nameplateW' | 'supply'>): number {
  const supply = fan.supply;
  if (supply === null) return 0;
  return fan.nameplateW / (supply.volts * supply.powerFactor * (supply.phases === 3 ? Math.sqrt(3) : 1));
}

/**
 * Full-load current where the supply is not stated, A: the least of the usual farm supplies (460 V three-phase, 1.2 A a
 * horsepower; NEC table 430.250 has 1.3 to 1.4, from memory).
 */
export function leastAmps({ nameplateW }: Pick<Fan, 'nameplateW'>): number {
  return (1.2 * nameplateW) / WATT_PER_HP;
}

/** A value half-way between standing and running; a log that stays far below the nameplate never ran. */
function splitAbove(values: Float64Array, nameplate: number): number {
  const sorted = values.filter((value) => Number.isFinite(value)).sort();
  const low = quantileOf(sorted, 0.02);
  const high = quantileOf(sorted, 0.98);
  if (high < 0.15 * nameplate || !(high > 0.5)) return Number.POSITIVE_INFINITY;
  return low > 0.5 * high ? 0.5 * low : (low + high) / 2;
}

function byMeter(fan: Pick<Fan, 'nameplateW'>, log: FanLog, i: number): number {
  if (i + 1 >= log.time.length) return UNKNOWN;
  const seconds = (log.time[i + 1] - log.time[i]) / 1000;
  const ranS = log.run_s[i + 1] - log.run_s[i];
  if (Number.isFinite(ranS) && ranS >= 0) return ranS > 0.02 * seconds ? MOVING : STILL;
  const usedJ = log.energy_j[i + 1] - log.energy_j[i];
  if (Number.isFinite(usedJ) && usedJ >= 0) return usedJ > 0.02 * seconds * fan.nameplateW ? MOVING : STILL;
  return UNKNOWN;
}

/** A fan's samples, with how long one holds good. */
export interface FanHistory {
  /** [readings], rising, ms */
  time: Float64Array;
  /** STILL, MOVING or UNKNOWN, [readings] */
  state: Uint8Array;
  reachMs: number;
}

/** A sample holds for three usual intervals, and in a log that writes only changes until the next. */
export function fanHistory(time: Float64Array, state: Uint8Array): FanHistory {
  const reachMs = isByChange(state) ? Number.POSITIVE_INFINITY : Math.max(3 * usualInterval(time), HOUR_MS);
  return { time, state, reachMs };
}

/**
 * What the air in a bin did at given times: STILL when every fan has stood for SETTLING_MS, MOVING while or shortly after
 * one ran, UNKNOWN where a log is lacking (a hole of more than three usual intervals counts as lacking).
 *
 * @param times  rising, ms, [times]
 * @param fans   each fan of the bin; null for a fan without a log
 */
export function airAt(times: ArrayLike<number>, fans: readonly (FanHistory | null)[]): Uint8Array {
  const out = new Uint8Array(times.length).fill(STILL);
  for (const fan of fans) {
    let next = 0;
    let lastMoving = Number.NEGATIVE_INFINITY;
    let settledMs = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < times.length; i++) {
      let state: number = UNKNOWN;
      if (fan !== null) {
        while (next < fan.time.length && fan.time[next] <= times[i]) {
          if (next > 0 && fan.state[next - 1] === MOVING) lastMoving = fan.time[next];
          if (fan.state[next] === UNKNOWN) settledMs = fan.time[next];
          next += 1;
        }
        if (next > 0 && times[i] - fan.time[next - 1] <= fan.reachMs) {
          state = fan.state[next - 1];
          const since = times[i] - Math.max(lastMoving, settledMs);
          if (state === STILL && since < SETTLING_MS) state = MOVING;
        }
      }
      if (state === MOVING || out[i] === MOVING) out[i] = MOVING;
      else if (state === UNKNOWN) out[i] = UNKNOWN;
    }
  }
  return out;
}

/**
 * Whether any of the fans ran at given times, by their own samples, without the hours that grain needs to settle.
 *
 * @param times  rising, ms, [times]
 * @returns      MOVING, STILL, or UNKNOWN where none is known to run and a log is lacking, [times]
 */
export function airNow(times: Float64Array, fans: readonly FanHistory[]): Uint8Array {
  const out = new Uint8Array(times.length).fill(STILL);
  for (const { time, state, reachMs } of fans) {
    let next = 0;
    for (let i = 0; i < times.length; i++) {
      while (next < time.length && time[next] <= times[i]) next += 1;
      const now = next > 0 && times[i] - time[next - 1] <= reachMs ? state[next - 1] : UNKNOWN;
      if (now === MOVING) out[i] = MOVING;
      else if (now === UNKNOWN && out[i] !== MOVING) out[i] = UNKNOWN;
    }
  }
  return out;
}

/** A log that writes only when the fan turns on or off: its samples alternate. */
export function isByChange(state: Uint8Array): boolean {
  let changes = 0;
  for (let i = 1; i < state.length; i++) if (state[i] !== state[i - 1]) changes += 1;
  return state.length > 3 && changes > 0.8 * (state.length - 1);
}

/** Mean running current of the samples in which the fan ran, A. */
export function runningAmps(log: FanLog, state: Uint8Array): number {
  return median(log.current_a.filter((value, i) => state[i] === MOVING && Number.isFinite(value)));
}
