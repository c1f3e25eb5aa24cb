import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { FanSpans } from '../types.ts';
import type { AirLog } from './air-log.ts';
import type { EnteringAir } from './entering-air.ts';
import type { FanPieces } from './fan-pieces.ts';
import type { GoodReadings } from './good-readings.ts';

export interface FrontsInput {
  bin: Bin;
  /** of this bin; others are left aside */
  sensors: readonly SensorSeries[];
  /** the bin's fans together */
  fan: FanSpans;
  /** a fan of the bin has a heater; left out: none */
  heated?: boolean;
  /** the bin's plenum log, good readings; empty where none */
  plenum: AirLog;
  /** outdoor air of the season, good readings; empty where none */
  weather: AirLog;
}

/** What all campaigns of a bin are looked for in. */
export interface FrontsView {
  input: FrontsInput;
  pieces: FanPieces;
  readings: readonly GoodReadings[];
  air: EnteringAir;
  grainC: Float64Array;
}
