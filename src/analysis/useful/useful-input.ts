import type { Bin, Season } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { BinFan, BinMoisture, FanSeason, FanSpans } from '../types.ts';

/** What the useful hours of a bin are told from. */
export interface UsefulInput {
  bin: Bin;
  season: Season;
  /** of the bin */
  series: readonly SensorSeries[];
  /** the bin's fans together */
  spans: FanSpans;
  fan: BinFan;
  /** all fans of the season */
  fans: readonly FanSeason[];
  moisture: BinMoisture;
  /** columns `time`, `temp_c`, `rh`, `flags`, time order; empty where there are none */
  plenum: Readonly<Record<string, Float64Array>>;
  weather: Readonly<Record<string, Float64Array>>;
}
