import { grainHumidityRatio } from '../../grain/grain-air.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import { placeIn, valueAt } from './humidity-log.ts';

/** Steps by which the errors of the cables are carried through: moisture, fraction, and temperature, K. */
export const MOISTURE_STEP_WB = 0.005;
export const TEMP_STEP_K = 0.5;
/** Readings farther apart than this, ms, say nothing of the time between. */
const GAP_MS = 13 * 3_600_000;

/** What one sensor says of the air at it, each value a humidity ratio, kg/kg; every array is [readings]. */
interface AirAtSensor {
  cable: string;
  sensor: number;
  heightM: number;
  timeMs: Float64Array;
  ratio: Float64Array;
  /** with half a point more moisture, and half a kelvin more */
  wetter: Float64Array;
  warmer: Float64Array;
  /** by each other isotherm */
  others: Float64Array[];
}

/** The air that leaves the grain at one moment, mean of the cables. */
export interface LeavingAir {
  ratio: number;
  wetter: number;
  warmer: number;
  others: readonly number[];
}

/**
 * A teller of the air that leaves the grain: on each cable the sensor nearest to where it leaves that has both readings, its
 * humidity by the isotherm that the cable itself used; cables weighted by floor and airflow.
 *
 * @param weightOf  of a cable
 * @returns         null where no cable has both readings near the moment
 */
export function leavingAir(
  bin: Bin,
  series: readonly SensorSeries[],
  isotherm: Isotherm,
  others: readonly Isotherm[],
  stationPa: number,
  weightOf: (cable: string) => number,
): (ms: number) => LeavingAir | null {
  const sensors = series
    .map((one) => airAtSensor(one, isotherm, others, stationPa))
    .filter((one) => one.timeMs.length > 0);
  const byCable = bin.cables.map((cable) => ({
    weight: weightOf(cable.id),
    // nearest to the way out first
    sensors: sensors
      .filter((one) => one.cable === cable.id)
      .sort((a, b) => (bin.air === 'up' ? b.heightM - a.heightM : a.heightM - b.heightM)),
  }));
  return (ms) => {
    const depthM = grainDepthAt(bin, ms);
    let weight = 0;
    const sum = { ratio: 0, wetter: 0, warmer: 0, others: others.map(() => 0) };
    for (const cable of byCable) {
      for (const sensor of cable.sensors) {
        if (depthM !== null && sensor.heightM >= depthM) continue;
        const place = placeIn(sensor.timeMs, ms, GAP_MS);
        if (place === null) continue;
        sum.ratio += cable.weight * valueAt(sensor.ratio, place);
        sum.wetter += cable.weight * valueAt(sensor.wetter, place);
        sum.warmer += cable.weight * valueAt(sensor.warmer, place);
        sensor.others.forEach((values, i) => {
          sum.others[i] += cable.weight * valueAt(values, place);
        });
        weight += cable.weight;
        break;
      }
    }
    if (!(weight > 0)) return null;
    return {
      ratio: sum.ratio / weight,
      wetter: sum.wetter / weight,
      warmer: sum.warmer / weight,
      others: sum.others.map((value) => value / weight),
    };
  };
}

function airAtSensor(
  series: SensorSeries,
  isotherm: Isotherm,
  others: readonly Isotherm[],
  stationPa: number,
): AirAtSensor {
  const { timeMs, tempC, moistureWb, tempFlags, moistureFlags } = series;
  const [coldest, hottest] = isotherm.tempRangeC;
  const rows: number[] = [];
  for (let row = 0; row < timeMs.length; row++) {
    const good = tempFlags[row] === 0 && moistureFlags[row] === 0;
    const within = tempC[row] >= coldest && tempC[row] <= hottest - 1;
    if (good && within && moistureWb[row] >= 0.03 && moistureWb[row] <= 0.5) rows.push(row);
  }
  const by = (one: Isotherm, addWb: number, addK: number) =>
    Float64Array.from(rows, (row) => {
      const t = Math.min(one.tempRangeC[1], Math.max(one.tempRangeC[0], tempC[row] + addK));
      return grainHumidityRatio(one, t, moistureWb[row] + addWb, stationPa);
    });
  return {
    cable: series.cable,
    sensor: series.sensor,
    heightM: series.heightM,
    timeMs: Float64Array.from(rows, (row) => timeMs[row]),
    ratio: by(isotherm, 0, 0),
    wetter: by(isotherm, MOISTURE_STEP_WB, 0),
    warmer: by(isotherm, 0, TEMP_STEP_K),
    others: others.map((one) => by(one, 0, 0)),
  };
}
