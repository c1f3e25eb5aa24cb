import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { believedReadings, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { FanSpans } from '../types.ts';

/** One sensor in the grain and its readings in good standing. */
export interface SensorLog {
  sensor: number;
  heightM: number;
  temperature: SensorReadings;
  /** null where the sensor tells no moisture */
  moisture: SensorReadings | null;
}

/** A cable and its part of the bin. */
export interface CableLog {
  cable: string;
  /** share of the floor; sums to 1 over the cables */
  share: number;
  /** rising height */
  sensors: readonly SensorLog[];
}

/**
 * The readings of a bin by cable; sensors at or above the surface, and those that told no temperature, are left out.
 *
 * @param series  of the bin
 * @param depthM  levelled depth when full
 */
export function cableLogs(
  bin: Bin,
  series: readonly SensorSeries[],
  spans: FanSpans | null,
  depthM: number,
  fromMs: number,
  toMs: number,
): CableLog[] {
  const keyOf = (cable: string, sensor: number) => `${cable} ${sensor}`;
  const by = (what: 'temperature' | 'moisture') =>
    new Map(believedReadings(bin, series, what, spans, fromMs, toMs).map((one) => [keyOf(one.cable, one.sensor), one]));
  const temperatures = by('temperature');
  const moistures = by('moisture');
  const placed = sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) =>
    temperatures.has(keyOf(cable, sensor)),
  );
  return [...new Set(placed.map(({ cable }) => cable))].map((cable) => {
    const own = placed.filter((one) => one.cable === cable);
    return {
      cable,
      share: own[0].cableShare,
      sensors: own.map(({ sensor, heightM }) => ({
        sensor,
        heightM,
        temperature: temperatures.get(keyOf(cable, sensor))!,
        moisture: moistures.get(keyOf(cable, sensor)) ?? null,
      })),
    };
  });
}
