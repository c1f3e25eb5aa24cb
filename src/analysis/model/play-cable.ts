import { relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from '../../grain/isotherm-equations.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import { type Bed, newBed } from '../../simulation/bed/bed.ts';
import { conduct } from '../../simulation/bed/conduct.ts';
import { tableTimes } from '../../simulation/bed/cubic-table.ts';
import type { Medium } from '../../simulation/bed/medium.ts';
import { passAir } from '../../simulation/bed/pass-air.ts';
import { setLevel } from '../../simulation/bed/set-level.ts';
import { setState } from '../../simulation/bed/set-state.ts';
import { spoil } from '../../simulation/bed/spoil.ts';
import type { LevelStep } from '../../simulation/run/run-spec.ts';
import type { BinLog } from './bin-log.ts';
import { CABLE_RH, type Profile, valueAtHeight } from './start-profile.ts';

const HOUR_S = 3600;
/** Hours of rest are taken in one step, so many at most; those of air are not: longer steps blunt its daily wave, and a fit would make up for it by airflow. */
const REST_H = 6;
const RUN_H = 1;

/** A bin's log with the grain that it is played with. */
export interface Played {
  log: BinLog;
  medium: Medium;
  /** of the grain, and by which the cables make moisture of humidity */
  isotherm: Isotherm;
  cableIsotherm: Isotherm;
  layers: number;
  levels: readonly LevelStep[];
  /** hours at whose end the sensors are read, rising multiples of six */
  readHours: readonly number[];
  /** of these, at which the grain itself is wanted too */
  sampledReads: ReadonlySet<number>;
}

/** What hangs on a cable alone, or on the values being fitted. */
export interface CableValues {
  /** airflow over that of the levels' blowers */
  flowFactor: number;
  wallWM3K: number;
  startK: number;
  respirationFactor: number;
  /** over the published specific heat and thin-layer rate */
  heatFactor: number;
  rateFactor: number;
  /** air that takes the heat of fans and heaters, over that of the levels' blowers */
  fansFlowFactor: number;
  /** what the air that enters was warmer than log and fans say, K */
  enteringK: number;
  /** what all of the cables' thermometers read too much, K */
  cablesK: number;
  /** part of the air at a sensor that came along the cable from where the air enters */
  slip: number;
}

/** What a cable's sensors would show, [hours read x sensors], row-major: degC; fraction, wet basis, without the cables' bias. */
export interface Shown {
  tempC: Float64Array;
  moistureWb: Float64Array;
  /** mean moisture of the column at the start and at the end, fraction of dry matter */
  startDb: number;
  endDb: number;
  /** by read: moisture of the layers, fraction of dry matter, [layers] */
  sampledDb: ReadonlyMap<number, Float64Array>;
}

/** Play the log through one column with the airflow of a cable, up to the last hour that is read. */
export function playCable(played: Played, cable: number, start: Profile, values: CableValues): Shown {
  const { log, medium, layers, levels, readHours } = played;
  const heights = log.cables[cable].sensors.map((sensor) => sensor.heightM);
  const bed = newBed({
    medium: mediumWith(medium, values),
    depthM: log.depthM,
    layers,
    air: log.bin.air,
    pressurePa: log.weather.hours.pressurePa,
    wallWM3K: values.wallWM3K,
  });
  const { fan, enteringC, relativeFlow, volumeM3Kg } = log;
  const { tempC: outdoorC, humidityRatio } = log.weather.hours;
  const shown = {
    tempC: new Float64Array(readHours.length * heights.length),
    moistureWb: new Float64Array(readHours.length * heights.length),
    startDb: Number.NaN,
    endDb: Number.NaN,
    sampledDb: new Map<number, Float64Array>(),
  };
  const around = { plenumC: Number.NaN, headspaceC: Number.NaN, wallC: Number.NaN };
  const before = new Float64Array(layers);
  const endHour = readHours.length === 0 ? 0 : readHours[readHours.length - 1] + 1;
  let level = 0;
  let read = 0;
  // What waits to be done in one step: hours, air, and what it brings.
  let hours = 0;
  let ran = 0;
  let sumAir = 0;
  let sumOutC = 0;
  let sumEntryC = 0;
  let sumRatio = 0;
  for (let hour = 0; hour < endHour; hour++) {
    while (level < levels.length && levels[level].hour <= hour) {
      setLevel(bed, levels[level].depthM, levels[level].tempC, levels[level].moistureDb);
      level += 1;
    }
    if (hour === 0) {
      setStart(bed, start, values.startK);
      shown.startDb = meanDb(bed);
    }
    const { airM3M2S, warmingK, heaterK } = levels[level - 1].blower;
    const share = fan.on[hour];
    const logged = enteringC[hour];
    hours += 1;
    ran += share;
    sumAir += (share * relativeFlow[hour]) / volumeM3Kg[hour];
    sumOutC += outdoorC[hour];
    sumEntryC +=
      share *
      ((Number.isNaN(logged) ? outdoorC[hour] + raisedK(log, values, warmingK, heaterK) : logged) + values.enteringK);
    sumRatio += share * humidityRatio[hour];
    const reads = hour === readHours[read];
    const goesOn = fan.on[hour + 1] === share && (share === 0 || share === 1) && hours < (share === 0 ? REST_H : RUN_H);
    if (goesOn && !reads && levels[level]?.hour !== hour + 1) continue;

    const meanOutC = sumOutC / hours;
    around.plenumC = meanOutC;
    around.headspaceC = meanOutC + (bed.down ? values.enteringK : 0);
    around.wallC = meanOutC;
    const air = airM3M2S * values.flowFactor * HOUR_S * sumAir;
    const ratio = sumRatio / ran;
    if (ran > 0) {
      before.set(bed.moistureDb);
      passAir(bed, air, HOUR_S * ran, sumEntryC / ran, ratio);
      if (!bed.down) around.plenumC += (ran / hours) * (sumEntryC / ran - meanOutC);
    }
    conduct(bed, hours * HOUR_S, around);
    hours = 0;
    ran = 0;
    sumAir = 0;
    sumOutC = 0;
    sumEntryC = 0;
    sumRatio = 0;
    if (reads) {
      spoil(bed, readHours[read] - (readHours[read - 1] ?? -1));
      const passing = share > 0.5 ? passingRatio(bed, before, air, ratio, values.slip) : null;
      show(played, bed, heights, passing, shown, read * heights.length, values.cablesK);
      if (played.sampledReads.has(read)) shown.sampledDb.set(read, bed.moistureDb.slice());
      read += 1;
    }
  }
  shown.endDb = meanDb(bed);
  return shown;
}

/** What fans and heater warm the air by: by the plenum's readings in the mean, else all the less the more air there is. */
function raisedK(log: BinLog, { fansFlowFactor }: CableValues, warmingK: number, heaterK: number): number {
  return log.warmingK === null || heaterK > 0 ? (warmingK + heaterK) / fansFlowFactor : warmingK;
}

function mediumWith(medium: Medium, { respirationFactor, heatFactor, rateFactor }: CableValues): Medium {
  const { heatDryJKgK, heatPerMoistureJKgK, rate } = medium;
  return {
    ...medium,
    respirationFactor,
    heatFactor,
    rateFactor,
    heatDryJKgK: heatFactor * heatDryJKgK,
    heatPerMoistureJKgK: heatFactor * heatPerMoistureJKgK,
    rate: tableTimes(rate, rateFactor),
  };
}

function setStart(bed: Bed, start: Profile, startK: number): void {
  const at = (values: Float64Array) =>
    Float64Array.from({ length: bed.layers }, (_, layer) =>
      valueAtHeight(start.heightM, values, (layer + 0.5) * bed.layerM),
    );
  setState(
    bed,
    at(start.tempC).map((tempC) => tempC + startK),
    at(start.moistureDb),
  );
}

/** Humidity ratio of the air that a cable meets in each layer: what left the layer, by what the layers gained, and what slipped by, [layers]. */
function passingRatio(bed: Bed, before: Float64Array, airKgM2: number, inRatio: number, slip: number): Float64Array {
  const { filled, moistureDb, dryKgM2, down, layers } = bed;
  const ratio = new Float64Array(layers).fill(inRatio);
  let w = inRatio;
  for (let step = 0; step < filled; step++) {
    const layer = down ? filled - 1 - step : step;
    w += (dryKgM2[layer] * (before[layer] - moistureDb[layer])) / airKgM2;
    ratio[layer] = w + slip * (inRatio - w);
  }
  return ratio;
}

/** In still air a cable stands in the grain's own air, in moving air in that which passes. */
function show(
  { isotherm, cableIsotherm: cable }: Played,
  bed: Bed,
  heights: readonly number[],
  passing: Float64Array | null,
  into: Shown,
  first: number,
  cablesK: number,
): void {
  const { a, b, c, equation, tempRangeC } = isotherm;
  heights.forEach((heightM, s) => {
    const tempC = at(bed, bed.tempC, heightM);
    const heldC = Math.min(Math.max(tempC, tempRangeC[0], cable.tempRangeC[0]), tempRangeC[1]);
    const humidity =
      passing === null
        ? isothermHumidity(equation, a, b, c, heldC, at(bed, bed.moistureDb, heightM))
        : relativeHumidityOfRatio(heldC, Math.max(0, at(bed, passing, heightM)), bed.pressurePa);
    const rh = Math.min(CABLE_RH[1], Math.max(CABLE_RH[0], humidity));
    into.tempC[first + s] = tempC + cablesK;
    into.moistureWb[first + s] = wetFromDry(isothermMoistureDb(cable.equation, cable.a, cable.b, cable.c, heldC, rh));
  });
}

/** Straight between the middles of the layers. */
function at(bed: Bed, values: Float64Array, heightM: number): number {
  const place = Math.min(bed.filled - 1, Math.max(0, heightM / bed.layerM - 0.5));
  const low = Math.min(bed.filled - 2, Math.floor(place));
  if (low < 0) return values[0];
  return values[low] + (place - low) * (values[low + 1] - values[low]);
}

function meanDb({ filled, dryKgM2, moistureDb }: Bed): number {
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < filled; i++) {
    sum += dryKgM2[i] * moistureDb[i];
    weight += dryKgM2[i];
  }
  return sum / weight;
}
