import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export const HOUR = 3_600_000;
export const START = Date.UTC(2024, 9, 1);

/** Seeded draws: uniform in [0, 1) and standard normal. */
export function draws(seed: number): { uniform: () => number; normal: () => number } {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

export interface Options {
  seed: number;
  days: number;
  /** hours between cable readings */
  everyH: number;
  tempStepK: number;
  tempNoiseK: number;
  moistureStepWb: number;
  moistureNoiseWb: number;
  cables: number;
  sensors: number;
  /** continuous: drying weeks, then bursts; nights: each night; none: never */
  fan: 'continuous' | 'nights' | 'none';
  fanLog: boolean;
  /** 1: no sensor hangs in air; the grain ends this many sensors below the top */
  bare: number;
}

export const TYPICAL: Options = {
  seed: 1,
  days: 120,
  everyH: 1,
  tempStepK: 1 / 18,
  tempNoiseK: 0.05,
  moistureStepWb: 0.001,
  moistureNoiseWb: 0.001,
  cables: 2,
  sensors: 6,
  fan: 'continuous',
  fanLog: true,
  bare: 0,
};

/** What a made bin logged. Sensor k of cable c is `temp[c * sensors + k]`, [readings], SI. */
export interface Made {
  options: Options;
  timeMs: Float64Array;
  temp: Float64Array[];
  moisture: Float64Array[];
  /** hourly */
  airMs: Float64Array;
  airC: Float64Array;
  airRh: Float64Array;
  fanOn: Uint8Array;
}

const LAYERS_A_SENSOR = 4;

/**
 * A bin made from scratch, without the kit's physics: air that turns with day, weather and season; heat and moisture
 * carried up through layers while the fan runs, spread a little while it stands; sensors with noise and steps.
 */
export function make(given: Partial<Options>): Made {
  const options = { ...TYPICAL, ...given };
  const { uniform, normal } = draws(options.seed);
  const hours = options.days * 24;
  const air = weather(hours, uniform, normal);
  const fanOn = fanHours(options, hours, uniform);
  const airMs = Float64Array.from({ length: hours }, (_, h) => START + h * HOUR);
  const readings = Math.floor(hours / options.everyH);
  const timeMs = Float64Array.from({ length: readings }, (_, i) => START + i * options.everyH * HOUR);
  const temp: Float64Array[] = [];
  const moisture: Float64Array[] = [];
  for (let c = 0; c < options.cables; c++) {
    // The cable under the spreader has hardly any air.
    const speed = c === 0 ? 0.25 : 0.8 + 0.6 * uniform();
    column(options, { ...air, fanOn }, speed, readings, normal, uniform).forEach((one) => {
      temp.push(one.temp);
      moisture.push(one.moisture);
    });
  }
  return { options, timeMs, temp, moisture, airMs, airC: air.airC, airRh: air.airRh, fanOn };
}

function weather(hours: number, uniform: () => number, normal: () => number) {
  const airC = new Float64Array(hours);
  const airRh = new Float64Array(hours);
  let synoptic = 0;
  let cloud = 0.5;
  for (let h = 0; h < hours; h++) {
    synoptic = 0.99 * synoptic + 0.7 * normal();
    if (h % 24 === 0) cloud = uniform();
    const season = 13 - 17 * Math.sin((Math.PI * Math.min(h / 24, 200)) / 200);
    const day = (2 + 7 * (1 - cloud)) * Math.sin((2 * Math.PI * ((h % 24) - 9)) / 24);
    airC[h] = Math.round((season + synoptic + day + 0.3 * normal()) * 10) / 10;
    airRh[h] = Math.round(Math.min(1, Math.max(0.2, 0.72 + 0.15 * cloud - day * 0.03 + 0.02 * normal())) * 100) / 100;
  }
  return { airC, airRh };
}

function fanHours({ fan }: Options, hours: number, uniform: () => number): Uint8Array {
  const on = new Uint8Array(hours);
  if (fan === 'none') return on;
  for (let h = 0; h < hours; h++) {
    if (fan === 'nights') on[h] = h % 24 >= 1 && h % 24 < 12 ? 1 : 0;
    else if (h < 24 * 25) on[h] = 1;
    else if (h % 24 === 0 && uniform() < 0.12) on.fill(1, h, Math.min(hours, h + 24 + Math.floor(uniform() * 60)));
  }
  return on;
}

function column(
  options: Options,
  air: { airC: Float64Array; airRh: Float64Array; fanOn: Uint8Array },
  speed: number,
  readings: number,
  normal: () => number,
  uniform: () => number,
): { temp: Float64Array; moisture: Float64Array }[] {
  const layers = options.sensors * LAYERS_A_SENSOR;
  const grainC = new Float64Array(layers).fill(18 + 6 * uniform());
  const wet = Float64Array.from({ length: layers }, () => 0.175 + 0.004 * normal());
  const lean = new Float64Array(layers);
  const errors = Array.from({ length: options.sensors }, () => ({ k: 0.5 * normal(), wb: 0.003 * normal() }));
  const wall = 0.02 + 0.1 * uniform();
  const out = errors.map(() => ({ temp: new Float64Array(readings), moisture: new Float64Array(readings) }));
  const round = (value: number, step: number) => (step > 0 ? Math.round(value / step) * step : value);
  for (let h = 0; h < air.airC.length; h++) {
    const inC = air.airC[h] + 1.5;
    const balance = 0.06 + 0.14 * air.airRh[h];
    for (let part = 0; part < 4; part++) {
      if (air.fanOn[h] === 1) {
        for (let k = layers - 1; k >= 0; k--) {
          grainC[k] += 0.25 * speed * ((k === 0 ? inC : grainC[k - 1]) - grainC[k]);
          wet[k] += (0.01 * speed * ((k === 0 ? balance : wet[k - 1]) - wet[k])) / 4;
          lean[k] += 0.2 * (0.15 * (balance - wet[k]) * 0.75 ** k - lean[k]);
        }
      } else {
        for (let k = 0; k < layers; k++) {
          const below = k === 0 ? grainC[0] : grainC[k - 1];
          const above = k === layers - 1 ? grainC[k] + (air.airC[h] - grainC[k]) * 0.02 : grainC[k + 1];
          grainC[k] += 0.0005 * (below + above - 2 * grainC[k]);
          lean[k] -= 0.15 * lean[k];
        }
      }
    }
    if (h % 24 === 0) for (let k = 0; k < layers; k++) grainC[k] += 0.0015 * wall * (air.airC[h] - grainC[k]) * 10;
    const perHour = Math.max(1, Math.round(1 / options.everyH));
    for (let sub = 0; sub < perHour; sub++) {
      const i = options.everyH >= 1 ? h / options.everyH : h * perHour + sub;
      if (!Number.isInteger(i) || i >= readings) continue;
      for (let s = 0; s < options.sensors; s++) {
        const k = s * LAYERS_A_SENSOR + 2;
        const inAir = s >= options.sensors - options.bare;
        // A wall that the sun warms: a fifth of the day's wave, some hours late.
        const sun = s === options.sensors - 1 ? 1.2 * Math.sin((2 * Math.PI * ((h % 24) - 11)) / 24) : 0;
        const truth = inAir && air.fanOn[h] === 0 ? air.airC[Math.max(0, h - 1)] * 1.0 + 1 : grainC[k] + sun;
        const noisy = truth + errors[s].k + options.tempNoiseK * normal();
        // Steps lie on the scale of the logger, °F for 1/18 and 5/9.
        out[s].temp[i] = round(noisy + 160 / 9, options.tempStepK) - 160 / 9;
        const shown = wet[k] + lean[k] + errors[s].wb + options.moistureNoiseWb * normal();
        out[s].moisture[i] = round(shown, options.moistureStepWb);
      }
    }
  }
  return out;
}
