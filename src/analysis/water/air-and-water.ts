import type { LoadedSeason } from '../../season/loaded.ts';
import type { Bin } from '../../season/season.ts';
import { rowsWhere, type SensorSeries } from '../../tables/sensors.ts';
import { binAirflow, missing } from '../airflow/bin-airflow.ts';
import { enteringTemperature, farmPressurePa } from '../airflow/entering-temperature.ts';
import { airLog } from '../fronts/air-log.ts';
import type { Ticket } from '../moisture/tickets.ts';
import type { BinAirflow, BinFan, BinGrainAmount, BinMoisture, BinWater, FanSpans } from '../types.ts';
import { binWater, missingWater } from './bin-water.ts';

export interface AirAndWaterInput {
  bin: Bin;
  /** of this bin */
  series: readonly SensorSeries[];
  spans: FanSpans | null;
  fan: BinFan;
  grain: BinGrainAmount;
  moisture: BinMoisture;
  tickets: readonly Ticket[];
}

/** A bin's airflow and its water, from the season's tables. */
export function airAndWater(
  { season, tables }: LoadedSeason,
  input: AirAndWaterInput,
): { airflow: BinAirflow; water: BinWater } {
  try {
    return worked(season, tables, input);
  } catch (error) {
    // What breaks here takes neither the bin's moisture nor its money along.
    const why = `It could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
    return { airflow: missing(why), water: missingWater(why) };
  }
}

function worked(
  season: LoadedSeason['season'],
  tables: LoadedSeason['tables'],
  input: AirAndWaterInput,
): { airflow: BinAirflow; water: BinWater } {
  const { bin } = input;
  const plenum = rowsWhere(tables.plenum, 'bin', bin.id, ['time', 'temp_c', 'rh', 'static_pressure_pa', 'flags']);
  const weather = rowsWhere(tables.weather, 'role', 'season', [
    'time',
    'temp_c',
    'rh',
    'dew_point_c',
    'pressure_pa',
    'flags',
  ]);
  const stationPa = farmPressurePa(season, weather.pressure_pa);
  const enteringC = enteringTemperature(bin, airLog(plenum), airLog(weather));
  const airflow = binAirflow({ ...input, season, plenum, stationPa, enteringC });
  const water = binWater({ ...input, season, airflow, plenum, weather, stationPa });
  return { airflow: airflow.told, water };
}
