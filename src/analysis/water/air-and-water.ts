import { errorText } from '../../base/error-text.ts';
import type { Bin, Season } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { AirRows } from '../air-rows.ts';
import { binAirflow, missing } from '../airflow/bin-airflow.ts';
import { enteringTemperature, farmPressurePa } from '../airflow/entering-temperature.ts';
import type { Ticket } from '../moisture/tickets.ts';
import type { BinAirflow, BinFan, BinGrainAmount, BinMoisture, BinWater, FanSpans } from '../types.ts';
import { binWater, missingWater } from './bin-water.ts';

export interface AirAndWaterInput {
  bin: Bin;
  season: Season;
  /** of this bin */
  series: readonly SensorSeries[];
  spans: FanSpans | null;
  fan: BinFan;
  grain: BinGrainAmount;
  moisture: BinMoisture;
  tickets: readonly Ticket[];
  /** of this bin */
  plenum: AirRows;
  weather: AirRows;
}

/** A bin's airflow and its water. */
export function airAndWater(input: AirAndWaterInput): { airflow: BinAirflow; water: BinWater } {
  try {
    return worked(input);
  } catch (error) {
    // What breaks here takes neither the bin's moisture nor its money along.
    const why = `It could not be worked out: ${errorText(error)}`;
    return { airflow: missing(why), water: missingWater(why) };
  }
}

function worked(input: AirAndWaterInput): { airflow: BinAirflow; water: BinWater } {
  const { bin, season } = input;
  const plenum = input.plenum.rows;
  const weather = input.weather.rows;
  const stationPa = farmPressurePa(season, weather.pressure_pa);
  const enteringC = enteringTemperature(bin, input.plenum.temperatures, input.weather.temperatures);
  const airflow = binAirflow({ ...input, plenum, stationPa, enteringC });
  const water = binWater({ ...input, airflow, plenum, weather, stationPa });
  return { airflow: airflow.told, water };
}
