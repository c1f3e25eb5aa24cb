import { median } from '../../base/stats/quantile.ts';
import type { Fan } from '../../bin/fan.ts';
import { POWER_TO_AIR } from '../fan/power-to-air.ts';
import { onAt } from '../fan/spans.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { FAN_ON, type FanSeason } from '../types.ts';
import { runningPowerW } from './fan-cost.ts';
import { HEATER_OFF, HEATER_ON, HEATER_UNTOLD, type HeaterUse } from './heater-use.ts';

const HOUR_MS = 3_600_000;
/** A reading speaks for so much time before and after it, and is the median of those so near: a thermometer's noise is no flame. Our choice. */
export const HEATER_NEAR_MS = 1.5 * HOUR_MS;
/** So short a doubt is none where the readings around it agree. Our choice. */
const SHORT_DOUBT_MS = 4 * HOUR_MS;
/** Warming by the fan alone, K: published are 0.4 to 2.8 (NDSU Extension: 0.8 degF an inch of water, 1 to 6 inches), and as much again either way. */
const FAN_K: readonly [number, number] = [0.3, 4];
const STEP_K = 0.05;
/** Less than this of a heater's own warming the sun on a thermometer makes too. Our choice. */
const LEAST_HEATER_K = 1;
/** Of the heater's own warming: up to so much over the fan's it was off, from the rest on it burned. Our choice. */
const OFF_SHARE = 1 / 3;
/** A warming as far from both levels as this says nothing more by being farther, K. */
const MOST_MISFIT_K = 1;
/** Fan warmings that misfit the log by so much more than the best one may be true as well, K h. Our choice: a day of a clear heater. */
const AS_LIKELY_KH = 24;
/** From this mean misfit on, neither level is the log's, K. */
const NO_FIT_K = 0.5;

/**
 * When a heater burned, by the warming of the plenum's air over the outdoor air while the fan ran. Fan and heater warm one stream of
 * air, so that with the heater it is warmed 1 + output / (0.9 x the fan's power) times as much as by the fan alone, whatever the
 * airflow. Of all warmings that the fan may make alone those that leave the log near to either level are taken; hours on which
 * they do not agree, or without a reading, are untold.
 *
 * @param fan      the only fan of its bin, which pushes the air up
 * @param plenum   of its bin
 * @param weather  outdoor air
 * @returns        null where the logs tell nothing at all
 */
export function heaterHours(fan: Fan, season: FanSeason, plenum: AirLog, weather: AirLog): HeaterUse | null {
  if (fan.heater === null || !(season.onHours > 0)) return null;
  const ratio = fan.heater.outputW / (POWER_TO_AIR * runningPowerW(fan, season));
  const warming = warmings(season, plenum, weather);
  const fans = likelyFans(warming.warmK, ratio, season.onHours);
  if (fans.length === 0) return null;
  const told = warming.warmK.map((warmK) => {
    const each = new Set(fans.map((fanK) => heatAt(warmK, fanK, ratio * fanK)));
    return each.size === 1 ? [...each][0] : HEATER_UNTOLD;
  });
  if (told.every((one) => one === HEATER_UNTOLD)) return null;
  return cutSpans(season, warming.timeMs, asAround(warming.timeMs, told));
}

/** Readings of the plenum while the fan ran: by how much each, with those near to it, is warmer than outdoors. */
function warmings({ spans }: FanSeason, plenum: AirLog, weather: AirLog): { timeMs: number[]; warmK: number[] } {
  const outdoor = betweenReadings(weather.timeMs, weather.tempC, plenum.timeMs, HEATER_NEAR_MS);
  const rows = [...plenum.timeMs.keys()].filter(
    (row) => !Number.isNaN(outdoor[row]) && onAt(spans, plenum.timeMs[row]) === FAN_ON,
  );
  const timeMs = rows.map((row) => plenum.timeMs[row]);
  const single = rows.map((row) => plenum.tempC[row] - outdoor[row]);
  let from = 0;
  let to = 0;
  const warmK = timeMs.map((at) => {
    while (timeMs[from] < at - HEATER_NEAR_MS) from += 1;
    while (to < timeMs.length && timeMs[to] <= at + HEATER_NEAR_MS) to += 1;
    return median(single.slice(from, to));
  });
  return { timeMs, warmK };
}

/** Warmings by the fan alone that go with the log, K; none where no warming does. */
function likelyFans(warmK: readonly number[], ratio: number, onHours: number): number[] {
  if (warmK.length === 0) return [];
  const steps = Array.from({ length: Math.round((FAN_K[1] - FAN_K[0]) / STEP_K) + 1 }, (_, i) => FAN_K[0] + i * STEP_K);
  const misfits = steps.map((fanK) => {
    const heatedK = fanK * (1 + ratio);
    const off = (of: number) => Math.min(MOST_MISFIT_K, Math.abs(of - fanK), Math.abs(of - heatedK));
    return warmK.reduce((sum, of) => sum + off(of), 0) / warmK.length;
  });
  const best = Math.min(...misfits);
  return best > NO_FIT_K ? [] : steps.filter((_, i) => (misfits[i] - best) * onHours <= AS_LIKELY_KH);
}

function heatAt(warmK: number, fanK: number, heaterK: number): number {
  if (heaterK < LEAST_HEATER_K) return HEATER_UNTOLD;
  const share = (warmK - fanK) / heaterK;
  if (share <= OFF_SHARE) return HEATER_OFF;
  return share >= 1 - OFF_SHARE ? HEATER_ON : HEATER_UNTOLD;
}

/** A short doubt between readings that tell the same, or at an end of a run, is the thermometer's, no flame: it is told as they are. */
function asAround(timeMs: readonly number[], told: readonly number[]): number[] {
  const out = [...told];
  // What stands beside a stretch in the same run; none beyond a pause.
  const beside = (row: number, of: number) =>
    row >= 0 && row < told.length && Math.abs(timeMs[row] - timeMs[of]) <= 2 * HEATER_NEAR_MS ? told[row] : null;
  for (let from = 0; from < told.length; from++) {
    if (told[from] !== HEATER_UNTOLD || beside(from - 1, from) === HEATER_UNTOLD) continue;
    let to = from;
    while (beside(to + 1, to) === HEATER_UNTOLD) to += 1;
    const [before, after] = [beside(from - 1, from), beside(to + 1, to)];
    const agree = before === null || after === null || before === after;
    if (agree && timeMs[to] - timeMs[from] <= SHORT_DOUBT_MS) out.fill(before ?? after ?? HEATER_UNTOLD, from, to + 1);
  }
  return out;
}

/** Until when a reading speaks: half-way to the next one (1), or the one before (-1), and no farther than it may. */
function halfWay(timeMs: readonly number[], row: number, side: 1 | -1): number {
  const other = timeMs[row + side] ?? side * Number.POSITIVE_INFINITY;
  return timeMs[row] + side * Math.min(HEATER_NEAR_MS, Math.abs(other - timeMs[row]) / 2);
}

/** The fan's spans cut half-way between readings that tell two things. @param told  [readings] */
function cutSpans({ spans }: FanSeason, timeMs: readonly number[], told: readonly number[]): HeaterUse {
  const list = { startMs: [] as number[], endMs: [] as number[], state: [] as number[], powerW: [] as number[] };
  const burned: number[] = [];
  const hours = [0, 0, 0];
  const push = (k: number, fromMs: number, toMs: number, heat: number) => {
    if (!(toMs > fromMs)) return;
    const last = burned.length - 1;
    if (last >= 0 && burned[last] === heat && list.endMs[last] === fromMs && list.startMs[last] >= spans.startMs[k]) {
      list.endMs[last] = toMs;
    } else {
      list.startMs.push(fromMs);
      list.endMs.push(toMs);
      list.state.push(spans.state[k]);
      list.powerW.push(spans.powerW[k]);
      burned.push(heat);
    }
    if (spans.state[k] === FAN_ON) hours[heat] += (toMs - fromMs) / HOUR_MS;
  };
  let next = 0;
  for (const [k, state] of spans.state.entries()) {
    const endMs = spans.endMs[k];
    if (state !== FAN_ON) {
      push(k, spans.startMs[k], endMs, HEATER_OFF);
      continue;
    }
    let at = spans.startMs[k];
    while (at < endMs) {
      while (next < timeMs.length && halfWay(timeMs, next, 1) <= at) next += 1;
      if (next === timeMs.length) {
        push(k, at, endMs, HEATER_UNTOLD);
        break;
      }
      const from = Math.min(endMs, Math.max(at, halfWay(timeMs, next, -1)));
      const to = Math.min(endMs, halfWay(timeMs, next, 1));
      push(k, at, from, HEATER_UNTOLD);
      push(k, from, to, told[next]);
      at = Math.max(from, to);
    }
  }
  return {
    spans: {
      startMs: Float64Array.from(list.startMs),
      endMs: Float64Array.from(list.endMs),
      state: Uint8Array.from(list.state),
      powerW: Float64Array.from(list.powerW),
    },
    burned: Uint8Array.from(burned),
    hours: hours[HEATER_ON],
    untoldHours: hours[HEATER_UNTOLD],
  };
}
