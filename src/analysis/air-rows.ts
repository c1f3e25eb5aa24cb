import type { LoadedSeason } from '../season/loaded.ts';
import { rowsWhere } from '../tables/sensors.ts';
import { type AirLog, airLog } from './fronts/air-log.ts';
import { weatherInstants } from './weather-instants.ts';

/** A log of air: its rows by column, in time order, and its temperatures in good standing. */
export interface AirRows {
  rows: Readonly<Record<string, Float64Array>>;
  temperatures: AirLog;
}

const WEATHER = ['time', 'temp_c', 'rh', 'dew_point_c', 'pressure_pa', 'flags'];
const PLENUM = ['time', 'temp_c', 'rh', 'static_pressure_pa', 'flags'];

/** Outdoor air of the season; without rows where there is none. */
export function weatherRows(loaded: Pick<LoadedSeason, 'season' | 'tables'>): AirRows {
  const { timeMs } = weatherInstants(loaded);
  return withTemperatures(rowsWhere(loaded.tables.weather, 'role', 'season', WEATHER, timeMs));
}

/** Air under a bin's floor; without rows where it has no log. */
export function plenumRows({ plenum }: LoadedSeason['tables'], binId: string): AirRows {
  return withTemperatures(rowsWhere(plenum, 'bin', binId, PLENUM));
}

function withTemperatures(rows: AirRows['rows']): AirRows {
  return { rows, temperatures: airLog(rows) };
}
