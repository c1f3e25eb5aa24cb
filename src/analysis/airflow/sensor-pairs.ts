import type { Cable } from '../../bin/cable.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { BinMoisture } from '../types.ts';
import { PAIR_SD, type PairFlux } from './cable-flux.ts';
import type { PassingCurve } from './passing-curve.ts';
import type { RunWindow } from './run-windows.ts';
import { transitFit } from './transit-fit.ts';
import { windowMoisture } from './window-moisture.ts';

/** Sensors nearer to each other than this, m, are passed too soon after each other to be timed. */
const LEAST_APART_M = 0.8;
/** The second sensor must repeat at least this much of what the first one saw. */
const LEAST_LIKENESS = 0.5;
/**
 * In a zone that dries or wets, the air's humidity changes with the weather too and moves temperatures on before they are
 * carried there: sd of the logarithm for each point by which the grain of a pair has changed or differs, up to two points. In
 * simulated beds that dry by 3 points and more, fits with their own spread are no worse than in those that only cool.
 */
const ZONE_SD_POINT = 0.03;

/**
 * Airflow past a cable by every pair of its sensors in one window.
 *
 * @param ratios  how fast a temperature moves up, by moisture
 */
export function sensorPairs(
  { bin, series, moisture }: { bin: Bin; series: readonly SensorSeries[]; moisture: BinMoisture },
  ratios: (moistureWb: number) => (tempC: number) => number,
  curves: readonly PassingCurve[],
  cable: Cable,
  window: RunWindow,
  number: number,
  dryMatterKgM3: number,
): PairFlux[] {
  const sensors = curves
    .filter((one) => one.cable === cable.id && one.heightM < window.depthM)
    .map((curve) => ({
      curve,
      fromEntryM: bin.air === 'up' ? curve.heightM : window.depthM - curve.heightM,
      moisture: windowMoisture(
        series.find((one) => one.cable === cable.id && one.sensor === curve.sensor),
        moisture,
        window.span,
      ),
    }))
    .sort((a, b) => a.fromEntryM - b.fromEntryM);
  const pairs: PairFlux[] = [];
  for (const [i, first] of sensors.entries()) {
    for (let j = i + 1; j < sensors.length; j++) {
      const second = sensors[j];
      const apartM = second.fromEntryM - first.fromEntryM;
      if (apartM < LEAST_APART_M) continue;
      const between = sensors.slice(i, j + 1).map((one) => one.moisture);
      const wb = between.reduce((sum, one) => sum + one.value, 0) / between.length;
      if (!(wb >= 0.06 && wb <= 0.35)) continue;
      const ratioAt = ratios(wb);
      const onTheWay = sensors
        .slice(i + 1, j)
        .map((one) => ({ part: (one.fromEntryM - first.fromEntryM) / apartM, curve: one.curve }));
      const fit = transitFit(first.curve, second.curve, apartM, window, { ratioAt, dryMatterKgM3 }, onTheWay);
      if (fit === null || fit.likeness < LEAST_LIKENESS) continue;
      const values = between.map((one) => 100 * one.value);
      const zone = Math.min(
        2,
        Math.max(...values) - Math.min(...values) + Math.max(...between.map((one) => one.changed)),
      );
      pairs.push({
        window: number,
        fluxKgM2S: fit.fluxKgM2S,
        logSd: Math.hypot(fit.logSd, PAIR_SD, ZONE_SD_POINT * zone),
      });
    }
  }
  return pairs;
}
