import type { LoadedSeason } from '../season/loaded.ts';
import { type SensorSeries, sensorSeries } from '../tables/sensors.ts';

const cut = new WeakMap<LoadedSeason, SensorSeries[]>();

/** The readings of all sensors, a series each. All pages ask for them; the table is cut once. */
export function seasonSeries(loaded: LoadedSeason): SensorSeries[] {
  const series = cut.get(loaded) ?? sensorSeries(loaded.tables.readings);
  cut.set(loaded, series);
  return series;
}
