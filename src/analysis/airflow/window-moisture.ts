import { median } from '../../base/stats/quantile.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { BinMoisture, Span } from '../types.ts';

/** Moisture at a sensor in a stretch of time, wet basis, fractions; NaN where nothing tells it. */
export interface WindowMoisture {
  value: number;
  /** since the bin was filled, points; 0 where not known */
  changed: number;
}

/** Median of a sensor's good moistures in the window; else the bin's mean of those days; else that at the start. */
export function windowMoisture(
  series: SensorSeries | undefined,
  moisture: BinMoisture,
  { fromMs, toMs }: Span,
): WindowMoisture {
  const start = moisture.start.value ?? Number.NaN;
  const share = moisture.shares.find((one) => one.cable === series?.cable && one.sensor === series?.sensor);
  const own = series === undefined ? Number.NaN : median(goodMoistures(series, fromMs, toMs));
  const days = moisture.daily.filter((day) => day.mean !== null && day.dayMs > fromMs - 864e5 && day.dayMs < toMs);
  const bin = median(days.map((day) => day.mean ?? Number.NaN));
  const value = [own, bin, start].find((one) => !Number.isNaN(one)) ?? Number.NaN;
  const before = share?.startWb ?? start;
  const changed = Number.isNaN(own) || Number.isNaN(before) ? 0 : 100 * Math.abs(own - before);
  return { value, changed };
}

function goodMoistures(series: SensorSeries, fromMs: number, toMs: number): number[] {
  const found: number[] = [];
  for (let i = 0; i < series.timeMs.length; i++) {
    const value = series.moistureWb[i];
    const counts = series.timeMs[i] >= fromMs && series.timeMs[i] <= toMs && series.moistureFlags[i] === 0;
    if (counts && value > 0 && value < 1) found.push(value);
  }
  return found;
}
