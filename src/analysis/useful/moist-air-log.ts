import { humidityRatio } from '../../air/humidity-ratio.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { airLog } from '../fronts/air-log.ts';

/** Readings of air in good standing: temperatures, and what water the air held; each in time order. */
export interface MoistAirLog {
  /** as `airLog` gives them */
  temperatures: AirLog;
  /** [readings] of their own; humidity ratio, kg/kg */
  humidities: { timeMs: Float64Array; ratio: Float64Array };
}

/** Temperatures of which the formulas speak, C. */
const AIR_C = [-50, 70] as const;
/** Sensors in fog read a little above saturation. */
const MOST_RH = 1.05;

/**
 * @param rows        columns `time`, `temp_c`, `rh` and `flags` of rowsWhere, time order
 * @param pressurePa  of the site
 */
export function moistAirLog(rows: Readonly<Record<string, Float64Array>>, pressurePa: number): MoistAirLog {
  const { time, temp_c: temp, rh, flags } = rows;
  const good = [...time.keys()].filter(
    (row) => !(flags[row] > 0) && temp[row] >= AIR_C[0] && temp[row] <= AIR_C[1] && rh[row] > 0 && rh[row] <= MOST_RH,
  );
  return {
    temperatures: airLog(rows),
    humidities: {
      timeMs: Float64Array.from(good, (row) => time[row]),
      ratio: Float64Array.from(good, (row) => humidityRatio(temp[row], Math.min(1, rh[row]), pressurePa)),
    },
  };
}
