import { humidityRatio, saturationPa, specificVolume } from './air.ts';
import { operatingPoint } from './airflow.ts';
import { fromLocal, HOUR, MINUTE } from './calendar.ts';
import { type Column, conduct, type Face, faceConductance, passAir } from './column-bed.ts';
import { newMemory, type Situation, type StageMemory, wantsFan } from './fan-rule.ts';
import type { BinPlan, FanPlan } from './farm-types.ts';
import { KERNELS, type Kernel, toDryBasis, toWetBasis } from './kernels.ts';
import { type Random, randomStream } from './random.ts';
import { type AirNow, type Weather, weatherAt } from './weather.ts';

export const FT = 0.3048;
export const STEP_MS = 10 * MINUTE;
const LAYERS = 64;
const CFM = 0.3048 ** 3 / 60;
const INCH_WATER = 249.08891;
/** share of the electric power that warms the air: the motor hangs in the stream */
const TO_AIR = 0.92;

export interface FanRun {
  fromMs: number;
  toMs: number;
}

/** A truckload that went in, as it truly was. */
export interface Load {
  atMs: number;
  kg: number;
  moistureWb: number;
}

export interface SensorTrace {
  cable: string;
  /** counted from 1, from the floor up */
  sensor: number;
  heightM: number;
  /** [steps]: temperature at the sensor without any error, C */
  tempC: Float32Array;
  /** [steps]: what the cable's own working gives, before its errors, % wet basis */
  moistureWb: Float32Array;
}

export interface BinRun {
  plan: BinPlan;
  kernel: Kernel;
  startMs: number;
  steps: number;
  sensors: SensorTrace[];
  /** by fan id, exact times */
  runs: Map<string, FanRun[]>;
  loads: Load[];
  /** [steps]: dry-matter-weighted means over all columns and layers; NaN while empty */
  meanMoistureDb: Float64Array;
  meanTempC: Float64Array;
  /** [steps] of the air under the floor, without errors */
  plenumC: Float32Array;
  plenumRh: Float32Array;
  pressurePa: Float32Array;
  /** [steps]: what hangs over the grain */
  headspaceC: Float32Array;
  headspaceRh: Float32Array;
  dryKg: number;
  wetKgFilled: number;
  areaM2: number;
  layerM: number;
  /** kg of water: carried off by air, and lost by the grain by the account of its layers */
  waterByAirKg: number;
  waterLostKg: number;
  columns: Column[];
  /** columns at a moment, for probes: asked for before the run */
  snapshots: Map<number, { moistureDb: Float64Array; tempC: Float64Array }[]>;
  flowM3S: number;
  stageSpans: { stage: number; fromMs: number; toMs: number }[];
}

const latestDepth = (plan: BinPlan): number => Math.max(...plan.fills.map((fill) => fill.depthFt));

function makeColumns(plan: BinPlan): { columns: Column[]; faces: Face[] } {
  const columns = plan.columns.map(
    (one): Column => ({
      id: one.id,
      areaM2: Math.PI * (one.toFt ** 2 - one.fromFt ** 2) * FT * FT * one.share,
      airShare: one.air,
      tempC: new Float64Array(LAYERS),
      moistureDb: new Float64Array(LAYERS),
      passedRatio: new Float64Array(LAYERS).fill(Number.NaN),
      dryKgM2: new Float64Array(LAYERS),
    }),
  );
  const total = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const air = columns.reduce((sum, one) => sum + one.areaM2 * one.airShare, 0) / total;
  for (const one of columns) one.airShare /= air;
  const faces: Face[] = [];
  plan.columns.forEach((inner, a) => {
    plan.columns.forEach((outer, b) => {
      if (outer.fromFt !== inner.toFt) return;
      const width = 2 * Math.PI * inner.toFt * FT * Math.min(inner.share, outer.share);
      // Quarters meet both halves of the wall ring in part; each pair gets its part of the circle.
      const part = inner.share === 1 || outer.share === 1 ? 1 : 0.5;
      const between = ((outer.toFt - inner.fromFt) / 2) * FT;
      faces.push({ a, b, wattPerMetreK: faceConductance(width * part, between), sun: 0 });
    });
    if (inner.sun !== undefined) {
      const width = 2 * Math.PI * inner.toFt * FT * inner.share;
      faces.push({
        a,
        b: null,
        wattPerMetreK: faceConductance(width, ((inner.toFt - inner.fromFt) / 2) * FT),
        sun: inner.sun,
      });
    }
  });
  return { columns, faces };
}

/** The column a cable hangs in: the core inside its radius, else the quarter of its bearing. */
function columnOfCable(plan: BinPlan, fromCentreFt: number, bearing: number): number {
  const within = plan.columns
    .map((one, i) => ({ one, i }))
    .filter(({ one }) => fromCentreFt >= one.fromFt && fromCentreFt < one.toFt);
  if (within.length === 1) return within[0].i;
  return within[Math.round(bearing / 90) % within.length].i;
}

function between(values: Float64Array, layers: number, layerM: number, heightM: number): number {
  const at = heightM / layerM - 0.5;
  const i = Math.min(layers - 2, Math.max(0, Math.floor(at)));
  const f = Math.min(1, Math.max(0, at - i));
  return values[i] + f * (values[i + 1] - values[i]);
}

interface Ticking {
  airC: number;
  rh: number;
}

/** Loads of a filling: their number from the weight, moisture and warmth wandering from load to load. */
function pourIn(
  random: Random,
  columns: readonly Column[],
  plan: BinPlan,
  fill: BinPlan['fills'][number],
  fromLayer: number,
  toLayer: number,
  layerM: number,
): Load[] {
  const area = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const bulk = plan.testWeightLb * 12.8718 * plan.packed;
  const weight = area * (toLayer - fromLayer) * layerM * bulk;
  const count = Math.max(1, Math.round(weight / 24_000));
  let wander = random.normal() * 0.4;
  const loads = Array.from({ length: count }, (_, k): Load & { tempC: number } => {
    wander = 0.7 * wander + 0.3 * random.normal();
    return {
      atMs: fromLocal(fill.at) - Math.round(((count - k) * 45 * MINUTE * Math.min(1, 16 / count)) / MINUTE) * MINUTE,
      kg: weight / count,
      moistureWb: fill.moisture + wander,
      tempC: fill.tempC + 1.2 * random.normal(),
    };
  });
  for (let i = fromLayer; i < toLayer; i++) {
    const load = loads[Math.min(count - 1, Math.floor(((i - fromLayer) / (toLayer - fromLayer)) * count))];
    for (const column of columns) {
      column.moistureDb[i] = toDryBasis(load.moistureWb);
      column.tempC[i] = load.tempC;
      column.dryKgM2[i] = layerM * bulk * (1 - load.moistureWb / 100);
      column.passedRatio[i] = Number.NaN;
    }
  }
  return loads.map(({ atMs, kg, moistureWb }) => ({ atMs, kg, moistureWb }));
}

/**
 * One bin from its first filling to the end of the logs, in steps of ten minutes with the fans' exact times inside them.
 *
 * @param snapshotAt  instants at which the columns are kept, for probes
 */
export function runBin(
  plan: BinPlan,
  fans: readonly FanPlan[],
  weather: Weather,
  seed: number,
  endMs: number,
  snapshotAt: readonly number[],
): BinRun {
  const kernel = KERNELS[plan.crop];
  const random = randomStream(seed, `bin ${plan.id}`);
  const { columns, faces } = makeColumns(plan);
  const areaM2 = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const layerM = (latestDepth(plan) * FT) / LAYERS;
  const startMs = Math.floor(fromLocal(plan.loggedFrom) / STEP_MS) * STEP_MS;
  const steps = Math.floor((endMs - startMs) / STEP_MS);
  const trace = () => new Float32Array(steps).fill(Number.NaN);
  const out: BinRun = {
    plan,
    kernel,
    startMs,
    steps,
    sensors: [],
    runs: new Map(plan.fans.map((id) => [id, []])),
    loads: [],
    meanMoistureDb: new Float64Array(steps).fill(Number.NaN),
    meanTempC: new Float64Array(steps).fill(Number.NaN),
    plenumC: trace(),
    plenumRh: trace(),
    pressurePa: trace(),
    headspaceC: trace(),
    headspaceRh: trace(),
    dryKg: 0,
    wetKgFilled: 0,
    areaM2,
    layerM,
    waterByAirKg: 0,
    waterLostKg: 0,
    columns,
    snapshots: new Map(),
    flowM3S: 0,
    stageSpans: [],
  };
  const ticking: Ticking[] = [];
  const sensorColumn: number[] = [];
  for (const cable of plan.cables) {
    cable.heightsFt.forEach((height, i) => {
      out.sensors.push({
        cable: cable.id,
        sensor: i + 1,
        heightM: height * FT,
        tempC: trace(),
        moistureWb: trace(),
      });
      sensorColumn.push(columnOfCable(plan, cable.fromCentreFt, cable.bearing));
      ticking.push({ airC: Number.NaN, rh: Number.NaN });
    });
  }

  const fills = plan.fills.map((fill) => ({ ...fill, ms: fromLocal(fill.at) }));
  const emptying = plan.emptying.map((one) => ({ ...one, ms: fromLocal(one.at) }));
  const stages = plan.stages.map((stage) => ({
    stage,
    fromMs: fromLocal(stage.from),
    toMs: fromLocal(stage.to),
    memory: newMemory() as StageMemory,
  }));
  const planOf = new Map(fans.map((fan) => [fan.id, fan]));
  const curveOf = (id: string) =>
    planOf.get(id)!.curve.map(([inches, cfm]) => [inches * INCH_WATER, cfm * CFM] as const);
  const pointCache = new Map<string, { flowM3S: number; pressurePa: number }>();

  let layers = 0;
  let fillsDone = 0;
  let plenumC = Number.NaN;
  let on = false;
  let running: readonly string[] = [];
  let meanTemp = 15;
  let meanDb = 18;
  let waterBefore = 0;
  const grainWater = () => {
    let kg = 0;
    for (const column of columns) {
      for (let i = 0; i < layers; i++) kg += (column.areaM2 * column.dryKgM2[i] * column.moistureDb[i]) / 100;
    }
    return kg;
  };
  const switchTo = (next: readonly string[], atMs: number) => {
    for (const id of running) if (!next.includes(id)) out.runs.get(id)!.at(-1)!.toMs = atMs;
    for (const id of next) if (!running.includes(id)) out.runs.get(id)!.push({ fromMs: atMs, toMs: endMs });
    running = next;
    on = next.length > 0;
  };
  const pointFor = (ids: readonly string[]) => {
    const key = `${ids.join('+')} ${layers}`;
    let point = pointCache.get(key);
    if (point === undefined) {
      point = operatingPoint(ids.map(curveOf), areaM2, layers * layerM, kernel.resistance);
      pointCache.set(key, point);
    }
    return point;
  };
  const warmedBy = (ids: readonly string[], air: AirNow): number => {
    if (ids.length === 0 || layers === 0) return 0;
    const kw = ids.reduce((sum, id) => sum + planOf.get(id)!.kw, 0);
    return (1000 * kw * TO_AIR) / ((pointFor(ids).flowM3S * 1006) / specificVolume(air.tempC, 0.005, air.pressurePa));
  };

  for (let step = 0; step < steps; step++) {
    const ms = startMs + step * STEP_MS;
    while (fillsDone < fills.length && ms >= fills[fillsDone].ms) {
      const to = Math.round((fills[fillsDone].depthFt * FT) / layerM);
      const before = grainWater();
      const loads = pourIn(random, columns, plan, fills[fillsDone], layers, to, layerM);
      layers = to;
      out.loads.push(...loads);
      out.wetKgFilled += loads.reduce((sum, load) => sum + load.kg, 0);
      waterBefore += grainWater() - before;
      // The load that buried a sensor came hours before the last one: it has settled by now.
      out.sensors.forEach((sensor, s) => {
        if (sensor.heightM < layers * layerM) ticking[s] = { airC: Number.NaN, rh: Number.NaN };
      });
      fillsDone++;
    }
    for (const one of emptying) {
      const to = Math.round((one.depthFt * FT) / layerM);
      if (ms >= one.ms && to < layers) {
        const before = grainWater();
        layers = to;
        waterBefore -= before - grainWater();
      }
    }
    const air = weatherAt(weather, ms + STEP_MS / 2);
    if (Number.isNaN(plenumC)) plenumC = air.tempC;

    // What the switch does now; a relay's delay of some minutes keeps the times off the grid.
    const active = stages.find((one) => ms >= one.fromMs && ms < one.toMs && !one.memory.done);
    const candidates = active === undefined ? running : active.stage.fans;
    const warmed = air.tempC + warmedBy(candidates, air);
    const situation: Situation = {
      utcMs: ms,
      outdoorC: air.tempC,
      plenumC: warmed,
      plenumRh: air.vapourPa / saturationPa(warmed),
      grainMeanC: meanTemp,
      grainMoistureWb: toWetBasis(meanDb),
      on,
    };
    const wanted =
      active !== undefined && layers > 0 && wantsFan(active.stage, active.memory, situation, kernel, weather)
        ? active.stage.fans
        : [];
    let before: readonly string[] = running;
    let beforeSeconds = STEP_MS / 1000;
    let afterSeconds = 0;
    if (wanted.join() !== running.join()) {
      const delay = random.integer(0, 9) * MINUTE;
      before = running;
      beforeSeconds = delay / 1000;
      afterSeconds = (STEP_MS - delay) / 1000;
      switchTo(wanted, ms + delay);
    }
    for (const [ids, seconds] of [
      [before, beforeSeconds],
      [running, afterSeconds],
    ] as const) {
      if (ids.length === 0 || seconds === 0 || layers === 0) continue;
      const point = pointFor(ids);
      const inC = air.tempC + warmedBy(ids, air);
      const ratio = humidityRatio(air.vapourPa, air.pressurePa);
      const kgPerM2S = point.flowM3S / specificVolume(inC, ratio, air.pressurePa) / areaM2;
      for (const column of columns) {
        out.waterByAirKg +=
          column.areaM2 *
          passAir(column, kernel, layers, kgPerM2S * column.airShare * seconds, seconds, inC, ratio, air.pressurePa);
      }
      plenumC = inC;
      out.flowM3S = point.flowM3S;
      if (active !== undefined) active.memory.fanMs += seconds * 1000;
    }
    if (!on) plenumC += (air.tempC - plenumC) * (STEP_MS / (9 * HOUR));

    let headspaceC = air.tempC + 0.0095 * air.sunWm2 - (air.sunWm2 === 0 ? 0.8 : 0);
    if (on && layers > 0) {
      const top = columns.reduce((sum, one) => sum + (one.areaM2 * one.tempC[layers - 1]) / areaM2, 0);
      headspaceC = 0.35 * headspaceC + 0.65 * top;
    }
    const headspaceRh = Math.min(0.99, air.vapourPa / saturationPa(headspaceC));
    if (step % 6 === 0) {
      conduct(columns, faces, layers, layerM, 3600, plenumC, headspaceC, (sun) => {
        const film = 5.7 + 3.8 * air.windMs;
        return air.tempC + (0.6 * air.sunWm2 * (0.15 + 0.75 * sun)) / film;
      });
    }
    if (layers > 0) {
      let dry = 0;
      let warm = 0;
      let wet = 0;
      for (const column of columns) {
        for (let i = 0; i < layers; i++) {
          const kg = column.areaM2 * column.dryKgM2[i];
          dry += kg;
          warm += kg * column.tempC[i];
          wet += kg * column.moistureDb[i];
        }
      }
      meanTemp = warm / dry;
      meanDb = wet / dry;
      out.meanMoistureDb[step] = meanDb;
      out.meanTempC[step] = meanTemp;
      if (fillsDone === fills.length && out.dryKg === 0) out.dryKg = dry;
    }

    out.plenumC[step] = plenumC;
    out.plenumRh[step] = Math.min(1, air.vapourPa / saturationPa(plenumC));
    out.pressurePa[step] = on && layers > 0 ? pointFor(running).pressurePa : 0;
    out.headspaceC[step] = headspaceC;
    out.headspaceRh[step] = headspaceRh;

    out.sensors.forEach((sensor, s) => {
      const state = ticking[s];
      const column = columns[sensorColumn[s]];
      let t = headspaceC;
      let rh = headspaceRh;
      let settleMs = 20 * MINUTE;
      if (layers > 1 && sensor.heightM < layers * layerM) {
        t = between(column.tempC, layers, layerM, sensor.heightM);
        const grainRh = Math.min(0.985, kernel.erh(between(column.moistureDb, layers, layerM, sensor.heightM), t));
        rh = grainRh;
        settleMs = 50 * MINUTE; // still air takes an hour or two to come back to the grain
        if (on) {
          const passing = between(column.passedRatio, layers, layerM, sensor.heightM);
          const ratio = humidityRatio(air.vapourPa, air.pressurePa);
          const relative = (w: number) => (w * air.pressurePa) / (0.62198 + w) / saturationPa(t);
          const stream = Number.isNaN(passing) ? grainRh : relative(passing);
          // Some air from below slips up along the cable itself.
          rh = Math.min(0.985, 0.88 * stream + 0.12 * relative(ratio));
          settleMs = 25 * MINUTE;
        }
      }
      sensor.tempC[step] = t;
      const lag = (from: number, to: number, ms: number) =>
        Number.isNaN(from) ? to : from + (to - from) * (1 - Math.exp(-STEP_MS / ms));
      state.airC = lag(state.airC, t, 18 * MINUTE);
      state.rh = lag(state.rh, rh, settleMs);
      sensor.moistureWb[step] = toWetBasis(Math.max(1, kernel.emc(state.rh, state.airC)));
    });
    if (snapshotAt.includes(ms)) {
      out.snapshots.set(
        ms,
        columns.map((one) => ({ moistureDb: one.moistureDb.slice(0, layers), tempC: one.tempC.slice(0, layers) })),
      );
    }
  }
  switchTo([], endMs);
  out.waterLostKg = waterBefore - grainWater();
  return out;
}
