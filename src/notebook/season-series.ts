import type { LoadedSeason } from '../season/loaded.ts';
import { sensorSeries } from '../tables/sensors.ts';
import { onceFor } from './once-for.ts';

/** The readings of all sensors, a series each. All pages ask for them; the table is cut once. */
export const seasonSeries = onceFor((loaded: LoadedSeason) => sensorSeries(loaded.tables.readings));
