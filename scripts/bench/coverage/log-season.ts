import { HOUR, MINUTE } from '../../sample/calendar.ts';
import { toWetBasis } from '../../sample/kernels.ts';
import { type Random, randomStream } from '../../sample/random.ts';
import { type Weather, weatherAt } from '../../sample/weather.ts';
import { drawOf } from './chance.ts';
import { round } from './draw-cables.ts';
import type { SeasonDraw } from './plan.ts';
import { type BinTrace, STEP_MS } from './run-bin.ts';
import { sensorErrors } from './sensor-errors.ts';

/** A cell is NaN where nothing was logged. Temperatures C, moisture and humidity %, pressure Pa, power kW, energy kWh, current A. */
export interface Logs {
  grain: { ms: number; bin: string; cable: string; sensor: number; heightM: number; temp: number; moisture: number }[];
  fan: { ms: number; fan: string; value: number; what: 'power' | 'current' | 'energy' | 'state' }[];
  plenum: { ms: number; bin: string; temp: number; rh: number; pressure: number }[];
  weather: { ms: number; temp: number; rh: number }[];
  /** kg, % */
  tickets?: { ms: number; bin: string; direction: 'in' | 'out'; kg: number; moisture: number }[];
}

/** What the loggers of a season wrote, with all of their errors and holes. */
export function logSeason(draw: SeasonDraw, traces: readonly BinTrace[], weather: Weather): Logs {
  const logs: Logs = { grain: [], fan: [], plenum: [], weather: [] };
  traces.forEach((trace, b) => {
    logGrain(trace, logs, randomStream(draw.seed, `grain log ${b}`));
    logFan(trace, logs, randomStream(draw.seed, `fan log ${b}`), draw.endMs);
    if (trace.draw.plenum) logPlenum(trace, logs, randomStream(draw.seed, `plenum log ${b}`));
  });
  const random = randomStream(draw.seed, 'weather log');
  for (let ms = Math.ceil(draw.startMs / HOUR) * HOUR; ms < draw.endMs; ms += HOUR) {
    if (random.uniform() < 0.005) continue;
    const air = weatherAt(weather, ms);
    logs.weather.push({
      ms,
      temp: round(air.tempC + 0.2 * random.normal(), 1),
      rh: Math.min(100, Math.round(100 * air.rh + 1.5 * random.normal())),
    });
  }
  return logs;
}

/** Holes of a log: each a day or so in mid-season, together about the given share. */
function holesOf(random: Random, share: number, fromMs: number, toMs: number): (ms: number) => boolean {
  if (share === 0) return () => false;
  const count = 1 + random.integer(0, 2);
  const length = (share * (toMs - fromMs)) / count;
  const starts = Array.from({ length: count }, () => fromMs + random.uniform() * (toMs - fromMs - length));
  return (ms) => starts.some((start) => ms >= start && ms < start + length);
}

function logGrain(trace: BinTrace, logs: Logs, random: Random): void {
  const { draw } = trace;
  const errors = sensorErrors(trace, random);
  const inHole = holesOf(random, draw.holes.grain, trace.startMs, draw.endMs);
  const dead = draw.deadSensors > 0 && trace.sensors.length > 3 ? random.integer(0, trace.sensors.length - 1) : -1;
  const every = draw.everyMin * MINUTE;
  const model = draw.moistureErrors;
  for (let ms = Math.ceil(trace.startMs / every) * every; ms < draw.endMs; ms += every) {
    const step = Math.floor((ms - trace.startMs) / STEP_MS) - 1;
    if (step < 0 || step >= trace.steps || inHole(ms)) continue;
    trace.sensors.forEach((sensor, s) => {
      if (s === dead) return;
      const { tempC, humidity, points } = errors.at(s, ms);
      const rh = Math.min(0.985, Math.max(0.02, sensor.rh[step] + humidity));
      const told = toWetBasis(draw.cableCurve.curve.emc(rh, sensor.tempC[step]));
      const noise = model.noise * drawOf(model.noiseShape, random);
      logs.grain.push({
        ms,
        bin: draw.id,
        cable: sensor.cable,
        sensor: sensor.sensor,
        heightM: sensor.heightM,
        temp: round(sensor.tempC[step] + tempC + 0.1 * random.normal(), 1),
        moisture: random.uniform() < 0.002 ? Number.NaN : round(told + points + noise, 1),
      });
    });
  }
}

function logFan(trace: BinTrace, logs: Logs, random: Random, endMs: number): void {
  const { draw } = trace;
  const { fan } = draw;
  const heater = draw.heater?.onFanLog === true ? draw.heater : null;
  const kw = fan.kw + (heater === null ? 0 : heater.outputW / heater.efficiency / 1000);
  const inHole = holesOf(random, draw.holes.fan, trace.startMs, draw.endMs);
  const every = draw.fanEveryMin * MINUTE;
  const amps = (1000 * kw) / (Math.sqrt(3) * 230 * fan.truePowerFactor);
  let meter = 1000 * random.uniform();
  let meterMs = trace.startMs - 24 * HOUR;
  for (let ms = Math.ceil(meterMs / every) * every; ms < Math.min(endMs, draw.endMs); ms += every) {
    const onAt = (at: number) => at >= trace.startMs && trace.on[Math.floor((at - trace.startMs) / STEP_MS)] === 1;
    // Runs begin and end in steps of five minutes of their own.
    for (let at = meterMs; at < ms; at += MINUTE) if (onAt(at)) meter += (kw * draw.powerFactorOfLog) / 60;
    meterMs = ms;
    if (inHole(ms)) continue;
    const on = onAt(ms);
    const values = {
      power: on ? kw * draw.powerFactorOfLog * (1 + 0.02 * random.normal()) : 0.02,
      current: on ? amps * draw.powerFactorOfLog * (1 + 0.02 * random.normal()) : 0.1,
      energy: meter,
      state: on ? 1 : 0,
    };
    logs.fan.push({ ms, fan: fan.id, what: fan.log, value: round(values[fan.log], 2) });
  }
}

function logPlenum(trace: BinTrace, logs: Logs, random: Random): void {
  const { draw } = trace;
  const fixedC = 0.25 * random.normal();
  const fixedRh = 1.5 * random.normal();
  const every = Math.max(30, draw.everyMin) * MINUTE;
  for (let ms = Math.ceil(trace.startMs / every) * every; ms < draw.endMs; ms += every) {
    const step = Math.floor((ms - trace.startMs) / STEP_MS);
    if (step < 0 || step >= trace.steps) continue;
    const pressure =
      trace.on[step] === 1
        ? trace.pressurePa * draw.gaugeFactor * (1 + 0.02 * random.normal()) + draw.gaugeOffsetPa
        : draw.gaugeOffsetPa + 2 * random.normal();
    logs.plenum.push({
      ms,
      bin: draw.id,
      temp: round(trace.plenumC[step] + fixedC + 0.15 * random.normal(), 1),
      rh: Math.min(100, round(100 * trace.plenumRh[step] + fixedRh + random.normal(), 1)),
      pressure: Math.round(pressure),
    });
  }
}
