import { specificVolume } from './air.ts';
import type { FanRun } from './bin-run.ts';
import { MINUTE } from './calendar.ts';
import type { FanPlan } from './farm-types.ts';
import { type Weather, weatherAt } from './weather.ts';

/** Electric power of a running fan: follows the density of the air it moves (fan laws), kW. */
export function powerKw(fan: FanPlan, weather: Weather, utcMs: number): number {
  const air = weatherAt(weather, utcMs);
  const density = 1 / specificVolume(air.tempC, 0.62198 * (air.vapourPa / air.pressurePa), air.pressurePa);
  return fan.kw * (0.25 + (0.75 * density) / 1.2);
}

/** A fan's energy by the minute in which it ran. */
export interface MinuteEnergy {
  /** start of the minute, UTC ms */
  ms: Float64Array;
  kwh: Float64Array;
}

/** Exact on and off times lie on whole minutes, so minutes carry the whole truth. */
export function minuteEnergy(fan: FanPlan, runs: readonly FanRun[], weather: Weather): MinuteEnergy {
  const ms: number[] = [];
  const kwh: number[] = [];
  for (const run of runs) {
    for (let at = run.fromMs; at < run.toMs; at += MINUTE) {
      ms.push(at);
      kwh.push(powerKw(fan, weather, at + MINUTE / 2) / 60);
    }
  }
  return { ms: Float64Array.from(ms), kwh: Float64Array.from(kwh) };
}
