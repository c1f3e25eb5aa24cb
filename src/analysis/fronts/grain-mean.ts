import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import { betweenReadings } from './between-readings.ts';
import { GRAIN_GAP_H, HOUR_MS } from './front-limits.ts';
import type { GoodReadings } from './good-readings.ts';
import { grainDepthAt } from './grain-depth.ts';

/** Where no depth is stated the surface is put this far above the highest sensor, m. */
const ABOVE_HIGHEST_M = 0.3;

/**
 * Mean temperature of the grain, each sensor weighing its share of it; a sensor without a reading near leaves its part
 * to the others.
 *
 * @param atMs  [times], rising
 * @returns     [times], C; NaN where no sensor in the grain has a reading near, and before there is grain
 */
export function grainMean(bin: Bin, readings: readonly GoodReadings[], atMs: Float64Array): Float64Array {
  const keyOf = (cable: string, sensor: number) => `${cable} ${sensor}`;
  const bySensor = new Map(readings.map((one) => [keyOf(one.cable, one.sensor), one]));
  const curves = new Map<string, Float64Array>();
  const curveOf = (key: string, one: GoodReadings) => {
    const found = curves.get(key) ?? betweenReadings(one.timeMs, one.tempC, atMs, GRAIN_GAP_H * HOUR_MS);
    curves.set(key, found);
    return found;
  };
  const highestM = Math.max(...bin.cables.flatMap((cable) => cable.sensorHeightsM), 0);
  const out = new Float64Array(atMs.length).fill(Number.NaN);
  for (let from = 0; from < atMs.length; ) {
    const stated = grainDepthAt(bin, atMs[from]);
    let to = from + 1;
    while (to < atMs.length && grainDepthAt(bin, atMs[to]) === stated) to += 1;
    const depthM = stated ?? highestM + ABOVE_HIGHEST_M;
    const placed =
      depthM > 0
        ? sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) => bySensor.has(keyOf(cable, sensor)))
        : [];
    const parts = placed.map(({ cable, sensor, share }) => {
      const key = keyOf(cable, sensor);
      return { share, curve: curveOf(key, bySensor.get(key)!) };
    });
    for (let i = from; i < to; i++) {
      let sum = 0;
      let weight = 0;
      for (const { share, curve } of parts) {
        if (Number.isNaN(curve[i])) continue;
        sum += share * curve[i];
        weight += share;
      }
      if (weight > 0) out[i] = sum / weight;
    }
    from = to;
  }
  return out;
}
