import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { type GoodReadings, goodReadings } from '../fronts/good-readings.ts';
import { placeIn, valueAt } from './humidity-log.ts';

/** Readings farther apart than this, ms, say nothing of the time between. */
const GAP_MS = 13 * 3_600_000;
/** Sensors that stand for less of the grain than this do not tell its mean. */
const LEAST_SHARE = 0.5;

/** Temperatures of a bin's grain at a moment, degC; NaN where too few sensors tell them. */
export interface GrainWarmth {
  /** mean of the grain, by the sensors' shares */
  meanC(ms: number, depthM: number): number;
  /** of the air that leaves: the sensor of each cable that is nearest to where it does */
  leavingC(ms: number, depthM: number): number;
}

/**
 * @param weightOf  a cable's share of the air
 */
export function grainWarmth(
  bin: Bin,
  series: readonly SensorSeries[],
  weightOf: (cable: string) => number,
): GrainWarmth {
  const readings = series
    .map((one) => goodReadings(one, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY))
    .filter((one) => one.timeMs.length > 1);
  const find = (cable: string, sensor: number) =>
    readings.find((one) => one.cable === cable && one.sensor === sensor) ?? null;
  const at = (one: GoodReadings, ms: number) => {
    const place = placeIn(one.timeMs, ms, GAP_MS);
    return place === null ? Number.NaN : valueAt(one.tempC, place);
  };
  const shares = new Map<number, { share: number; readings: GoodReadings }[]>();
  const placed = (depthM: number) => {
    let known = shares.get(depthM);
    if (known === undefined) {
      known = sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) => find(cable, sensor) !== null).map(
        ({ cable, sensor, share }) => ({ share, readings: find(cable, sensor)! }),
      );
      shares.set(depthM, known);
    }
    return known;
  };
  return {
    meanC(ms, depthM) {
      let sum = 0;
      let weight = 0;
      for (const one of placed(depthM)) {
        const tempC = at(one.readings, ms);
        if (Number.isNaN(tempC)) continue;
        sum += one.share * tempC;
        weight += one.share;
      }
      return weight >= LEAST_SHARE ? sum / weight : Number.NaN;
    },
    leavingC(ms, depthM) {
      let sum = 0;
      let weight = 0;
      for (const cable of bin.cables) {
        const own = placed(depthM)
          .map((one) => one.readings)
          .filter((one) => one.cable === cable.id)
          .sort((a, b) => (bin.air === 'up' ? b.heightM - a.heightM : a.heightM - b.heightM));
        const tempC = own.map((one) => at(one, ms)).find((value) => !Number.isNaN(value));
        if (tempC === undefined) continue;
        sum += weightOf(cable.id) * tempC;
        weight += weightOf(cable.id);
      }
      return weight > 0 ? sum / weight : Number.NaN;
    },
  };
}
