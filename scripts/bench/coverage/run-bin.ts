import { humidityRatio, saturationPa, specificVolume } from '../../sample/air.ts';
import { bedPressurePa } from '../../sample/airflow.ts';
import { DAY, HOUR, MINUTE } from '../../sample/calendar.ts';
import { type Column, conduct, type Face, faceConductance, passAir } from '../../sample/column-bed.ts';
import { toDryBasis, toWetBasis } from '../../sample/kernels.ts';
import { meanTempC, type Weather, weatherAt } from '../../sample/weather.ts';
import { columnOf } from './draw-cables.ts';
import { flowOf } from './draw-fan.ts';
import { FanSwitch } from './fan-switch.ts';
import type { BinDraw } from './plan.ts';
import { type SensorState, senseAir } from './sense-air.ts';

export const STEP_MS = 30 * MINUTE;
export const LAYERS = 28;
/** share of the electric power that warms the air */
export const TO_AIR = 0.9;

export interface SensorTrace {
  cable: string;
  sensor: number;
  heightM: number;
  /** [steps], C, and the air's humidity inside the cable, fraction; without errors */
  tempC: Float32Array;
  rh: Float32Array;
}

/** What truly happened in a bin, in steps of half an hour from when it was filled. */
export interface BinTrace {
  draw: BinDraw;
  startMs: number;
  steps: number;
  sensors: SensorTrace[];
  /** [steps] 1 while the fan runs */
  on: Uint8Array;
  /** [steps] dry-matter-weighted mean, % dry basis */
  meanDb: Float64Array;
  plenumC: Float32Array;
  plenumRh: Float32Array;
  pressurePa: number;
  flowM3S: number;
  dryKg: number;
  /** water that the air carried off, kg */
  waterByAirKg: number;
}

export function runBin(draw: BinDraw, weather: Weather): BinTrace {
  const steps = Math.floor((draw.endMs - draw.filledMs) / STEP_MS);
  const layerM = draw.depthM / LAYERS;
  const { columns, faces, areaM2 } = makeColumns(draw);
  const flowM3S = flowOf(draw);
  const pressurePa = bedPressurePa(flowM3S / areaM2, draw.depthM * draw.depthFactor, draw.grain.resistance);
  const series = () => new Float32Array(steps);
  const out: BinTrace = {
    draw,
    startMs: draw.filledMs,
    steps,
    sensors: draw.cables.flatMap((cable) =>
      cable.heightsM.map((heightM, i) => ({ cable: cable.id, sensor: i + 1, heightM, tempC: series(), rh: series() })),
    ),
    on: new Uint8Array(steps),
    meanDb: new Float64Array(steps),
    plenumC: series(),
    plenumRh: series(),
    pressurePa,
    flowM3S,
    dryKg: 0,
    waterByAirKg: 0,
  };
  const states: SensorState[] = out.sensors.map(() => ({ tempC: Number.NaN, rh: Number.NaN }));
  const home = draw.cables.flatMap((cable) => cable.heightsM.map(() => columnOf(draw.columns, cable)));
  pourIn(draw, columns, weather, layerM);
  for (const column of columns) for (const kg of column.dryKgM2) out.dryKg += column.areaM2 * kg;
  const fan = new FanSwitch(draw, weather, STEP_MS);
  let meanC = mean(columns, (column) => column.tempC);
  out.meanDb[0] = mean(columns, (column) => column.moistureDb);
  let plenumC = weatherAt(weather, draw.filledMs).tempC;
  for (let step = 0; step < steps; step++) {
    const ms = out.startMs + step * STEP_MS;
    const air = weatherAt(weather, ms + STEP_MS / 2);
    const ratio = humidityRatio(air.vapourPa, air.pressurePa);
    const volume = specificVolume(air.tempC, ratio, air.pressurePa);
    const warmedC =
      air.tempC +
      (1000 * draw.fan.kw * TO_AIR + (draw.heater?.outputW ?? 0)) / ((flowM3S * 1006) / draw.throughGrain / volume);
    const meanDb = out.meanDb[Math.max(0, step - 1)];
    const on = fan.wants(ms, warmedC, air.vapourPa / saturationPa(warmedC), meanC, toWetBasis(meanDb));
    if (on) {
      const kgM2 = ((flowM3S / volume / areaM2) * STEP_MS) / 1000;
      for (const column of columns) {
        out.waterByAirKg +=
          column.areaM2 *
          passAir(column, draw.grain, LAYERS, kgM2 * column.airShare, STEP_MS / 1000, warmedC, ratio, air.pressurePa);
      }
      plenumC = warmedC;
    } else plenumC += (air.tempC - plenumC) * (STEP_MS / (9 * HOUR));
    const headspaceC = air.tempC + 0.008 * air.sunWm2;
    if (step % 4 === 0) {
      const film = 5.7 + 3.8 * air.windMs;
      const wallC = () => air.tempC + (0.3 * air.sunWm2) / film;
      conduct(columns, faces, LAYERS, layerM, (4 * STEP_MS) / 1000, plenumC, headspaceC, wallC);
    }
    out.on[step] = on ? 1 : 0;
    out.meanDb[step] = mean(columns, (column) => column.moistureDb);
    meanC = mean(columns, (column) => column.tempC);
    out.plenumC[step] = plenumC;
    out.plenumRh[step] = Math.min(1, air.vapourPa / saturationPa(plenumC));
    const around = {
      layers: LAYERS,
      layerM,
      on,
      ratio,
      pressurePa: air.pressurePa,
      headspaceC,
      rh: air.rh,
      stepMs: STEP_MS,
    };
    out.sensors.forEach((sensor, s) => {
      senseAir(states[s], sensor.heightM, columns[home[s]], draw, around);
      sensor.tempC[step] = states[s].tempC;
      sensor.rh[step] = states[s].rh;
    });
  }
  return out;
}

const mean = (columns: readonly Column[], of: (column: Column) => Float64Array): number => {
  let sum = 0;
  let weight = 0;
  for (const column of columns) {
    const values = of(column);
    for (let i = 0; i < values.length; i++) {
      const kg = column.areaM2 * column.dryKgM2[i];
      sum += kg * values[i];
      weight += kg;
    }
  }
  return sum / weight;
};

export function makeColumns(draw: BinDraw): { columns: Column[]; faces: Face[]; areaM2: number } {
  const columns = draw.columns.map(
    (one, i): Column => ({
      id: String(i),
      areaM2: (Math.PI * (one.toM ** 2 - one.fromM ** 2)) / one.parts,
      airShare: one.air,
      tempC: new Float64Array(LAYERS),
      moistureDb: new Float64Array(LAYERS),
      passedRatio: new Float64Array(LAYERS).fill(Number.NaN),
      dryKgM2: new Float64Array(LAYERS),
    }),
  );
  const areaM2 = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const air = columns.reduce((sum, one) => sum + one.areaM2 * one.airShare, 0) / areaM2;
  for (const one of columns) one.airShare /= air;
  const faces: Face[] = draw.columns.flatMap((one, a) => {
    if (one.toM < draw.diameterM / 2) return [];
    const width = (2 * Math.PI * one.toM) / one.parts;
    return [{ a, b: null, wattPerMetreK: faceConductance(width, (one.toM - one.fromM) / 2), sun: 0.5 }];
  });
  return { columns, faces, areaM2 };
}

/** Load upon load, with the air in balance with the grain; the bin's dry matter is what depth and test weight say times a factor. */
export function pourIn(draw: BinDraw, columns: readonly Column[], weather: Weather, layerM: number): void {
  const warm = meanTempC(weather, draw.filledMs - 2 * DAY, draw.filledMs) + draw.tempC;
  const bulk = (draw.testWeightLb * 0.45359237) / (1.2445 * 0.3048 ** 3);
  for (const column of columns) {
    for (let i = 0; i < LAYERS; i++) {
      const wb = draw.loadsWb[Math.floor((draw.loadsWb.length * i) / LAYERS)];
      column.moistureDb[i] = toDryBasis(wb);
      column.tempC[i] = warm;
      column.dryKgM2[i] = bulk * draw.massFactor * layerM * (1 - wb / 100);
    }
  }
}
