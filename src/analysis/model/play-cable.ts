import { relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import { EQUILIBRIUM_RH_RANGE } from '../../grain/equilibrium.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from '../../grain/isotherm-equations.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import { type Bed, newBed } from '../../simulation/bed/bed.ts';
import { conduct } from '../../simulation/bed/conduct.ts';
import type { Medium } from '../../simulation/bed/medium.ts';
import { passAir } from '../../simulation/bed/pass-air.ts';
import { setLevel } from '../../simulation/bed/set-level.ts';
import { setState } from '../../simulation/bed/set-state.ts';
import { spoil } from '../../simulation/bed/spoil.ts';
import type { LevelStep } from '../../simulation/run/run-spec.ts';
import type { BinLog } from './bin-log.ts';
import { type Profile, valueAtHeight } from './start-profile.ts';

const HOUR_S = 3600;
/** With the fan off what flows through the grain is followed in steps of so many hours. */
const REST_H = 6;

/** A bin's log with the grain that it is played with. */
export interface Played {
  log: BinLog;
  medium: Medium;
  isotherm: Isotherm;
  layers: number;
  levels: readonly LevelStep[];
  /** hours at whose end the sensors are read, rising multiples of six */
  readHours: readonly number[];
}

/** What hangs on a cable alone, or on the values being fitted. */
export interface CableValues {
  /** airflow over that of the levels' blowers */
  flowFactor: number;
  wallWM3K: number;
  startK: number;
  respirationFactor: number;
  /** part of the air at a sensor that came along the cable from where the air enters */
  slip: number;
}

/** What a cable's sensors would show, [hours read x sensors], row-major: degC; fraction, wet basis, without the cables' bias. */
export interface Shown {
  tempC: Float64Array;
  moistureWb: Float64Array;
  /** mean moisture of the column at the end, fraction of dry matter */
  endDb: number;
}

/** Play the log through one column with the airflow of a cable, up to the last hour that is read. */
export function playCable(played: Played, cable: number, start: Profile, values: CableValues): Shown {
  const { log, medium, layers, levels, readHours } = played;
  const heights = log.cables[cable].sensors.map((sensor) => sensor.heightM);
  const bed = newBed({
    medium: { ...medium, respirationFactor: values.respirationFactor },
    depthM: log.depthM,
    layers,
    air: log.bin.air,
    pressurePa: log.weather.hours.pressurePa,
    wallWM3K: values.wallWM3K,
  });
  const { tempC: outdoorC, humidityRatio } = log.weather.hours;
  const shown = {
    tempC: new Float64Array(readHours.length * heights.length),
    moistureWb: new Float64Array(readHours.length * heights.length),
    endDb: Number.NaN,
  };
  const around = { plenumC: Number.NaN, headspaceC: Number.NaN, wallC: Number.NaN };
  const before = new Float64Array(layers);
  const endHour = readHours.length === 0 ? 0 : readHours[readHours.length - 1] + 1;
  let level = 0;
  let read = 0;
  let rested = 0;
  let restC = 0;
  for (let hour = 0; hour < endHour; hour++) {
    const levelBefore = level;
    while (level < levels.length && levels[level].hour <= hour) {
      setLevel(bed, levels[level].depthM, levels[level].tempC, levels[level].moistureDb);
      level += 1;
    }
    if (hour === 0) setStart(bed, start, values.startK);
    const blower = levels[level - 1].blower;
    const share = log.fan.on[hour];
    const logged = log.enteringC[hour];
    const entryC = Number.isNaN(logged) ? outdoorC[hour] + blower.warmingK + blower.heaterK : logged;
    const air = blower.dryAirKgM2S * values.flowFactor * HOUR_S * share;
    if (share > 0) {
      if (rested > 0) rest(bed, rested, restC / rested, around);
      rested = 0;
      restC = 0;
      before.set(bed.moistureDb);
      passAir(bed, air, HOUR_S * share, entryC, humidityRatio[hour]);
      around.plenumC = bed.down ? outdoorC[hour] : outdoorC[hour] + share * (entryC - outdoorC[hour]);
      around.headspaceC = outdoorC[hour];
      around.wallC = outdoorC[hour];
      conduct(bed, HOUR_S, around);
    } else {
      rested += 1;
      restC += outdoorC[hour];
      const due = rested === REST_H || hour === readHours[read] || levels[level]?.hour === hour + 1;
      if (due || level !== levelBefore) {
        rest(bed, rested, restC / rested, around);
        rested = 0;
        restC = 0;
      }
    }
    if (hour % REST_H === REST_H - 1) spoil(bed, REST_H);
    if (hour === readHours[read]) {
      const passing = share > 0.5 ? passingRatio(bed, before, air, humidityRatio[hour], values.slip) : null;
      show(played, bed, heights, passing, shown, read * heights.length);
      read += 1;
    }
  }
  shown.endDb = meanDb(bed);
  return shown;
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

function rest(
  bed: Bed,
  hours: number,
  outdoorC: number,
  around: { plenumC: number; headspaceC: number; wallC: number },
): void {
  around.plenumC = outdoorC;
  around.headspaceC = outdoorC;
  around.wallC = outdoorC;
  conduct(bed, hours * HOUR_S, around);
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
  { isotherm, log }: Played,
  bed: Bed,
  heights: readonly number[],
  passing: Float64Array | null,
  into: Shown,
  first: number,
): void {
  const { a, b, c, equation, tempRangeC } = isotherm;
  const cable = log.cableIsotherm;
  heights.forEach((heightM, s) => {
    const tempC = at(bed, bed.tempC, heightM);
    const heldC = Math.min(Math.max(tempC, tempRangeC[0], cable.tempRangeC[0]), tempRangeC[1]);
    const humidity =
      passing === null
        ? isothermHumidity(equation, a, b, c, heldC, at(bed, bed.moistureDb, heightM))
        : relativeHumidityOfRatio(heldC, Math.max(0, at(bed, passing, heightM)), bed.pressurePa);
    const rh = Math.min(EQUILIBRIUM_RH_RANGE[1], Math.max(EQUILIBRIUM_RH_RANGE[0], humidity));
    into.tempC[first + s] = tempC;
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
