import { median } from '../../base/stats/quantile.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { Campaign } from '../types.ts';

/** Temperature of a sensor when a campaign had ended, C; null where nothing was read then. */
export type EndTemperature = (campaign: Campaign, cable: string, sensor: number) => number | null;

/** So long before the end readings count: the fan's last night and day halves out. */
const BEFORE_END_MS = 12 * 3_600_000;

/**
 * What a bin's sensors read at the end of a campaign: the median of the believed readings of its last 12 hours.
 *
 * @param series  all sensors; those of other bins are left aside
 */
export function endTemperature(bin: string, series: readonly SensorSeries[]): EndTemperature {
  const own = new Map(series.filter((one) => one.bin === bin).map((one) => [`${one.cable}\n${one.sensor}`, one]));
  return ({ span }, cable, sensor) => {
    const of = own.get(`${cable}\n${sensor}`);
    if (of === undefined) return null;
    const values: number[] = [];
    of.timeMs.forEach((time, i) => {
      if (time < span.toMs - BEFORE_END_MS || time > span.toMs || of.tempFlags[i] !== 0) return;
      values.push(of.tempC[i]);
    });
    const middle = median(values);
    return Number.isNaN(middle) ? null : middle;
  };
}
