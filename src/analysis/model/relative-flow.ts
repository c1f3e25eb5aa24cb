import type { LoadedSeason } from '../../season/loaded.ts';
import { plenumRows } from '../air-rows.ts';
import { relativeFlow } from '../airflow/flow-through-time.ts';
import { pressureLog } from '../airflow/pressure-log.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import type { BinReview } from '../types.ts';
import { DEPTH_POWER } from './blower-of.ts';

/**
 * Airflow of each hour over that with the fans that ran most, where a bin has several: by the logged pressure, else by their number.
 * What the depth does is left to the levels' blowers.
 *
 * @param depthM  at full depth
 * @returns       [hours]; 1 throughout for one fan
 */
export function relativeFlowByHour(
  { tables }: LoadedSeason,
  { bin, fan, airflow }: BinReview,
  startMs: number,
  count: number,
  depthM: number,
): Float64Array {
  const same = new Float64Array(count).fill(1);
  const { spans, fans } = fan;
  if (fans.length < 2 || spans.state.length === 0 || airflow.fanSet === '') return same;
  const log = pressureLog(bin, spans, fans, plenumRows(tables, bin.id).rows);
  const relativeAt = relativeFlow(bin, log, fans, depthM, airflow.fanSet);
  return same.map((_, hour) => {
    const ms = startMs + (hour + 0.5) * HOUR_MS;
    const deepM = Math.min(depthM, grainDepthAt(bin, ms) ?? depthM);
    const relative = relativeAt(ms) * (deepM / depthM) ** DEPTH_POWER;
    return relative > 0 ? relative : 1;
  });
}
