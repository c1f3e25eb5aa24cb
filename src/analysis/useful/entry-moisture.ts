import type { Zone } from '../../base/zone.ts';
import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import { dailyMoisture } from '../moisture/daily-moisture.ts';
import { believedReadings } from '../moisture/sensor-readings.ts';
import type { FanSpans } from '../types.ts';
import { byDays } from './grain-moisture-at.ts';

/** A sensor farther than this from where the air enters does not hang in the layer that the air meets first, m. */
const ENTRY_LAYER_M = 1.5;

/**
 * Moisture of the layer where the air enters: of each cable the sensor nearest to the floor (air pushed up) or to the
 * surface (drawn down), weighted by the cables' rings.
 *
 * @param atMs  [times]
 * @returns     moisture [times] and the mean distance of these sensors from where the air enters; null where none hangs there
 */
export function entryMoisture(
  bin: Bin,
  series: readonly SensorSeries[],
  spans: FanSpans,
  fill: FillTimes,
  zone: Zone,
  atMs: Float64Array,
): { moistureWb: Float64Array; heightM: number } | null {
  const { depthM } = fill;
  if (depthM === null || !(depthM > 0)) return null;
  const readings = believedReadings(
    bin,
    series,
    'moisture',
    spans,
    fill.filledMs ?? Number.NEGATIVE_INFINITY,
    fill.wholeUntilMs ?? Number.POSITIVE_INFINITY,
  );
  const placed = sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) =>
    readings.some((one) => one.cable === cable && one.sensor === sensor),
  );
  const entry = bin.cables.flatMap(({ id }) => {
    const own = placed.filter((one) => one.cable === id);
    const first = bin.air === 'up' ? own[0] : own.at(-1);
    if (first === undefined) return [];
    const distanceM = bin.air === 'up' ? first.heightM : depthM - first.heightM;
    return distanceM <= ENTRY_LAYER_M ? [{ ...first, distanceM }] : [];
  });
  if (entry.length === 0) return null;
  const isEntry = (cable: string, sensor: number) => entry.some((one) => one.cable === cable && one.sensor === sensor);
  const sharesOf = (usable: (cable: string, sensor: number) => boolean) =>
    sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) => isEntry(cable, sensor) && usable(cable, sensor));
  const days = dailyMoisture(
    readings.filter((one) => isEntry(one.cable, one.sensor)),
    sharesOf,
    spans,
    zone,
  );
  return {
    moistureWb: byDays(days, null, null, atMs),
    heightM: entry.reduce((sum, one) => sum + one.heightM, 0) / entry.length,
  };
}
