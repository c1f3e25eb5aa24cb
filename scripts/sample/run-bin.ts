import { humidityRatio, saturationPa, specificVolume } from './air.ts';
import { type BinRun, FT, LAYERS, STEP_MS } from './bin-run.ts';
import { blowerOf } from './blower.ts';
import { type CableAir, readCable } from './cable-air.ts';
import { fromLocal, HOUR, MINUTE } from './calendar.ts';
import { conduct, passAir } from './column-bed.ts';
import { newMemory, type Situation, type StageMemory, wantsFan } from './fan-rule.ts';
import type { BinPlan, FanPlan } from './farm-types.ts';
import { KERNELS, toWetBasis } from './kernels.ts';
import { columnOfCable, makeColumns } from './make-columns.ts';
import { pourIn } from './pour-in.ts';
import { randomStream } from './random.ts';
import { type Weather, weatherAt } from './weather.ts';

const latestDepth = (plan: BinPlan): number => Math.max(...plan.fills.map((fill) => fill.depthFt));

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
  };
  const ticking: CableAir[] = [];
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
  const blower = blowerOf(fans, areaM2, layerM, kernel);

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

  /** by layers and fans: how long they blew, and what */
  const ranTogether = new Map<string, { seconds: number; layers: number; flowM3S: number }>();
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
    const warmed = air.tempC + blower.warmedBy(candidates, layers, air);
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
      const point = blower.point(ids, layers);
      const inC = air.tempC + blower.warmedBy(ids, layers, air);
      const ratio = humidityRatio(air.vapourPa, air.pressurePa);
      const kgPerM2S = point.flowM3S / specificVolume(inC, ratio, air.pressurePa) / areaM2;
      for (const column of columns) {
        out.waterByAirKg +=
          column.areaM2 *
          passAir(column, kernel, layers, kgPerM2S * column.airShare * seconds, seconds, inC, ratio, air.pressurePa);
      }
      plenumC = inC;
      // Of several fans the airflow told is of those that ran together longest, at the most layers that they met.
      const together = `${layers} ${ids.join('+')}`;
      ranTogether.set(together, {
        seconds: seconds + (ranTogether.get(together)?.seconds ?? 0),
        layers,
        flowM3S: point.flowM3S,
      });
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
    out.pressurePa[step] = on && layers > 0 ? blower.point(running, layers).pressurePa : 0;
    out.headspaceC[step] = headspaceC;
    out.headspaceRh[step] = headspaceRh;

    const around = { layers, layerM, on, air, headspaceC, headspaceRh };
    out.sensors.forEach((sensor, s) => {
      readCable(sensor, step, ticking[s], columns[sensorColumn[s]], kernel, around);
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
  const most = Math.max(0, ...[...ranTogether.values()].map((one) => one.layers));
  const full = [...ranTogether.values()].filter((one) => one.layers === most);
  out.flowM3S = full.reduce((a, b) => (b.seconds > a.seconds ? b : a), { seconds: 0, flowM3S: 0 }).flowM3S;
  return out;
}
