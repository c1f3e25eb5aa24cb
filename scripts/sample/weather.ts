import { saturationPa, standardPressure } from './air.ts';
import { DAY, HOUR } from './calendar.ts';
import { randomStream } from './random.ts';

/** Invented hourly weather without a hole; arrays are [hours] from startMs on, values at the full hour. */
export interface Weather {
  startMs: number;
  tempC: Float64Array;
  dewPointC: Float64Array;
  rh: Float64Array;
  seaLevelPa: Float64Array;
  /** station pressure */
  pressurePa: Float64Array;
  /** on a flat surface, W/m2 */
  sunWm2: Float64Array;
  windMs: Float64Array;
}

const STATION_HEIGHT_M = 308;

/** A first-order autoregressive walk of unit spread: one step an hour, memory in hours. */
function walk(seed: number, name: string, hours: number, memoryHours: number): Float64Array {
  const random = randomStream(seed, name);
  const keep = Math.exp(-1 / memoryHours);
  const fresh = Math.sqrt(1 - keep * keep);
  const out = new Float64Array(hours);
  let value = random.normal();
  for (let i = 0; i < hours; i++) {
    value = keep * value + fresh * random.normal();
    out[i] = value;
  }
  return out;
}

/** Sine of the sun's height at 42 N, 94 W, from the hour of true solar time and the day of the year. */
function sunHeight(utcMs: number): number {
  const day = (utcMs - Date.UTC(new Date(utcMs).getUTCFullYear(), 0, 1)) / DAY;
  const tilt = -0.4093 * Math.cos((2 * Math.PI * (day + 10)) / 365.25);
  const solar = ((utcMs / HOUR) % 24) - 94 / 15 - 12;
  const latitude = (42 * Math.PI) / 180;
  return Math.max(
    0,
    Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.cos((2 * Math.PI * solar) / 24),
  );
}

/**
 * Weather of the upper Middle West, invented: yearly and daily waves, systems of some days, cloud that damps the daily wave, humidity by dew point.
 * Nothing of it was measured anywhere; monthly means were set by eye to about -6 C in January and 23 C in July (common knowledge of the region).
 */
export function inventWeather(seed: number, startMs: number, endMs: number): Weather {
  const hours = Math.round((endMs - startMs) / HOUR);
  const systems = walk(seed, 'systems', hours, 55);
  const spells = walk(seed, 'spells', hours, 24 * 9);
  const years = walk(seed, 'years', hours, 24 * 150);
  const flutter = walk(seed, 'flutter', hours, 5);
  const cloudWalk = walk(seed, 'cloud', hours, 26);
  const dampWalk = walk(seed, 'damp', hours, 34);
  const windWalk = walk(seed, 'wind', hours, 14);
  const pressureWalk = walk(seed, 'pressure', hours, 60);
  const field = () => new Float64Array(hours);
  const out: Weather = {
    startMs,
    tempC: field(),
    dewPointC: field(),
    rh: field(),
    seaLevelPa: field(),
    pressurePa: field(),
    sunWm2: field(),
    windMs: field(),
  };
  const stationShare = standardPressure(STATION_HEIGHT_M) / 101325;
  let ground = 0; // the day's warmth, filtered from the sun
  for (let i = 0; i < hours; i++) {
    const ms = startMs + i * HOUR;
    const year = (ms - Date.UTC(new Date(ms).getUTCFullYear(), 0, 1)) / DAY;
    const cold = 0.5 - 0.5 * Math.cos((2 * Math.PI * (year - 200)) / 365.25); // 1 in mid winter
    const cloud = 1 / (1 + Math.exp(-(1.4 * cloudWalk[i] + 0.7 * dampWalk[i] + 0.5 * cold - 0.3)));
    const sun = 950 * sunHeight(ms) * (1 - 0.75 * cloud ** 1.6);
    ground += (sun - ground) * 0.22;
    const dayMean = 950 * 0.21 * (1 - 0.75 * cloud ** 1.6) * (1 - 0.55 * cold);
    const seasonal = 8.1 + 13.6 * Math.cos((2 * Math.PI * (year - 202)) / 365.25);
    const slow = seasonal + (3.2 + 1.9 * cold) * systems[i] + 2.2 * spells[i] + 1.0 * years[i];
    const temp = slow + 0.0215 * (ground - dayMean) + 0.5 * flutter[i];
    const depression = 3.1 + 3.4 * (1 - cloud) - 1.2 * cold - 1.9 * dampWalk[i] - 0.5 * systems[i];
    const dew = Math.min(temp - 0.15, slow - Math.max(0.2, depression));
    out.tempC[i] = temp;
    out.dewPointC[i] = dew;
    out.rh[i] = saturationPa(dew) / saturationPa(temp);
    out.seaLevelPa[i] = 101600 + 180 * cold + 620 * pressureWalk[i] - 260 * systems[i];
    out.pressurePa[i] = out.seaLevelPa[i] * stationShare;
    out.sunWm2[i] = sun;
    out.windMs[i] = Math.max(0, 3.6 + 1.7 * windWalk[i] + 0.004 * sun);
  }
  return out;
}

/** Air at an instant, straight between the hours. */
export interface AirNow {
  tempC: number;
  rh: number;
  vapourPa: number;
  pressurePa: number;
  sunWm2: number;
  windMs: number;
}

export function weatherAt(weather: Weather, utcMs: number): AirNow {
  const at = (utcMs - weather.startMs) / HOUR;
  const i = Math.min(weather.tempC.length - 2, Math.max(0, Math.floor(at)));
  const f = at - i;
  const mix = (values: Float64Array) => values[i] + f * (values[i + 1] - values[i]);
  const tempC = mix(weather.tempC);
  const vapour = saturationPa(Math.min(tempC, mix(weather.dewPointC)));
  return {
    tempC,
    rh: vapour / saturationPa(tempC),
    vapourPa: vapour,
    pressurePa: mix(weather.pressurePa),
    sunWm2: mix(weather.sunWm2),
    windMs: mix(weather.windMs),
  };
}

/** Mean temperature of the hours [from, to): what a manager knows from a good forecast. */
export function meanTempC(weather: Weather, fromMs: number, toMs: number): number {
  const from = Math.max(0, Math.floor((fromMs - weather.startMs) / HOUR));
  const to = Math.min(weather.tempC.length, Math.ceil((toMs - weather.startMs) / HOUR));
  let sum = 0;
  for (let i = from; i < to; i++) sum += weather.tempC[i];
  return sum / (to - from);
}

/** One calendar year (UTC) in NOAA's ISD-Lite layout: fixed width, tenths, -9999 missing, times UTC. */
export function isdLite(weather: Weather, year: number, seed: number): string {
  const random = randomStream(seed, `isd ${year}`);
  const lines: string[] = [];
  let bearing = 22;
  const cell = (value: number) => String(value).padStart(6);
  for (let ms = Date.UTC(year, 0, 1); ms < Date.UTC(year + 1, 0, 1); ms += HOUR) {
    const i = Math.round((ms - weather.startMs) / HOUR);
    if (random.uniform() < 0.0015) continue; // an hour that the station did not send
    const lost = random.uniform() < 0.001;
    if (random.uniform() < 0.3) bearing = (bearing + 36 + random.integer(-2, 2)) % 36;
    const d = new Date(ms);
    const stamp = [d.getUTCMonth() + 1, d.getUTCDate(), d.getUTCHours()].map((n) => String(n).padStart(2, '0'));
    const tenth = (value: number) => Math.round(value * 10);
    const temp = tenth(weather.tempC[i]);
    const cells = [
      lost ? -9999 : temp,
      lost ? -9999 : Math.min(temp, tenth(weather.dewPointC[i])),
      tenth(weather.seaLevelPa[i] / 100),
      bearing * 10,
      Math.round(weather.windMs[i]) * 10,
      Math.round(weather.rh[i] * 4) * 2,
      -9999,
      -9999,
    ];
    lines.push(`${year} ${stamp.join(' ')}${cells.map(cell).join('')}`);
  }
  return `${lines.join('\n')}\n`;
}
