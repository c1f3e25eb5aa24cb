import { saturationPa } from './air.ts';
import { type BinRun, type FanRun, STEP_MS } from './bin-run.ts';
import { tenth, toF } from './cable-log.ts';
import { HOUR, MINUTE } from './calendar.ts';
import type { FanPlan } from './farm-types.ts';
import { type MinuteEnergy, powerKw } from './power.ts';
import { randomStream } from './random.ts';
import type { Weather } from './weather.ts';

/** One row of a fan log; null where the fan has no such sensor. */
export interface FanRow {
  ms: number;
  fan: string;
  amps: number | null;
  kw: number | null;
  kwh: number | null;
  state: 0 | 1 | null;
  hours: number | null;
}

/** What a logger wrote about a fan: values at the instant, meters as they stood. */
export function fanRows(
  fan: FanPlan,
  runs: readonly FanRun[],
  energy: MinuteEnergy,
  weather: Weather,
  seed: number,
  startMs: number,
  endMs: number,
  everyMin: number,
): FanRow[] {
  const random = randomStream(seed, `fan log ${fan.id}`);
  const out: FanRow[] = [];
  const meterStart = random.integer(2000, 9000) + random.uniform();
  const hoursStart = random.integer(200, 3000) + random.uniform();
  let at = 0; // minutes of energy already counted
  let kwh = 0;
  let r = 0;
  const every = everyMin * MINUTE;
  for (let ms = Math.ceil(startMs / every) * every; ms < endMs; ms += every) {
    while (at < energy.ms.length && energy.ms[at] < ms) kwh += energy.kwh[at++];
    while (r < runs.length && runs[r].toMs <= ms) r++;
    const on = r < runs.length && runs[r].fromMs <= ms;
    const kw = on ? powerKw(fan, weather, ms) : 0;
    // The supply sags and swells by half a percent over the day.
    const volts = fan.volts * (1 + 0.004 * Math.sin((2 * Math.PI * ms) / (24 * HOUR)) + 0.002 * random.normal());
    const phase = fan.phases === 3 ? Math.sqrt(3) : 1;
    const amps = (1000 * kw) / (phase * volts * fan.truePowerFactor);
    const has = (what: FanPlan['logs'][number]) => fan.logs.includes(what);
    out.push({
      ms,
      fan: fan.id,
      amps: has('current')
        ? tenth(on ? amps * (1 + 0.008 * random.normal()) : Math.max(0, 0.04 * random.normal()))
        : null,
      kw: has('power') ? Math.round(100 * kw * (1 + 0.005 * random.normal())) / 100 : null,
      kwh: has('energy') ? tenth(meterStart + kwh) : null,
      state: has('state') ? (on ? 1 : 0) : null,
      hours: has('run_hours') ? Math.round(100 * (hoursStart + at / 60)) / 100 : null,
    });
  }
  return out;
}

export interface PlenumRow {
  ms: number;
  bin: string;
  temp: number;
  rh: number;
  pressure: number;
}

/** Hourly air under the floor, with the sensor's fixed error, noise and steps. */
export function plenumRows(run: BinRun, seed: number, endMs: number): PlenumRow[] {
  const random = randomStream(seed, `plenum ${run.plan.id}`);
  const tempError = 0.25 * random.normal();
  const rhError = 1.1 * random.normal();
  const out: PlenumRow[] = [];
  for (let ms = Math.ceil(run.startMs / HOUR) * HOUR; ms < endMs; ms += HOUR) {
    const step = Math.round((ms - run.startMs) / STEP_MS);
    if (step >= run.steps) break;
    out.push({
      ms,
      bin: run.plan.id,
      temp: tenth(toF(run.plenumC[step] + tempError + 0.1 * random.normal())),
      rh: tenth(Math.min(100, Math.max(8, 100 * run.plenumRh[step] + rhError + 0.8 * random.normal()))),
      pressure: Math.round(100 * Math.max(0, run.pressurePa[step] / 249.08891 + 0.012 * random.normal())) / 100,
    });
  }
  return out;
}

export interface StationRow {
  ms: number;
  temp: number;
  rh: number;
  hpa: number;
}

/** The farm's own weather station, hourly. */
export function stationRows(weather: Weather, seed: number, startMs: number, endMs: number): StationRow[] {
  const random = randomStream(seed, 'station');
  const out: StationRow[] = [];
  for (let ms = Math.ceil(startMs / HOUR) * HOUR; ms < endMs; ms += HOUR) {
    const i = Math.round((ms - weather.startMs) / HOUR);
    const c = weather.tempC[i];
    const rh = saturationPa(weather.dewPointC[i]) / saturationPa(c);
    out.push({
      ms,
      temp: tenth(toF(c + 0.1 + 0.08 * random.normal())),
      rh: Math.round(Math.min(100, 100 * rh + 0.6 + 0.7 * random.normal())),
      hpa: tenth(weather.pressurePa[i] / 100 + 0.2 * random.normal()),
    });
  }
  return out;
}
