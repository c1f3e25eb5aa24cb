import type { Bin } from '../../season/season.ts';
import { onAt } from '../fan/spans.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import { FAN_ON, type FanSeason, type FanSpans } from '../types.ts';
import { fanSetAt } from './fan-sets.ts';

/** Less is no fan at work; chimney draught in a bin stays far below. The same limit as the checks of the logs have. */
const LEAST_PA = 12;
/** Beyond what farm fans make, Pa (16 in. of water). */
const MOST_PA = 4000;

/** Static pressures while fans ran; every array is [readings], time order. */
export interface PressureLog {
  timeMs: Float64Array;
  /** amount of the pressure, Pa: a fan that draws down makes it negative */
  pressurePa: Float64Array;
  depthM: Float64Array;
  /** which fans ran, `F1+F2` */
  fanSet: string[];
}

/** Less grain than this, m, is no bed to tell a pressure of. */
export const LEAST_DEPTH_M = 0.1;
/** A stage that differs from full by less is full. */
export const FULL_SHARE = 0.97;

/** Indices of the readings of each depth and set of fans, by `depth set`, in order of first appearance. */
export function byStage({ depthM, fanSet }: PressureLog): Map<string, number[]> {
  const rows = new Map<string, number[]>();
  for (let i = 0; i < fanSet.length; i++) {
    if (!(depthM[i] > LEAST_DEPTH_M)) continue;
    const key = stageKey(depthM[i], fanSet[i]);
    const found = rows.get(key);
    if (found === undefined) rows.set(key, [i]);
    else found.push(i);
  }
  return rows;
}

export function stageKey(depthM: number, fanSet: string): string {
  return `${depthM} ${fanSet}`;
}

/**
 * The plenum's static pressures with the fan on, each with the depth of the grain and the fans of its moment.
 *
 * @param rows  columns `time` and `static_pressure_pa` of rowsWhere; a row's flags are for its temperature and humidity
 */
export function pressureLog(
  bin: Bin,
  spans: FanSpans,
  fans: readonly FanSeason[],
  rows: Readonly<Record<string, Float64Array>>,
): PressureLog {
  const { time, static_pressure_pa: pressure } = rows;
  const kept = [...time.keys()].filter((row) => {
    const amount = Math.abs(pressure[row]);
    return amount >= LEAST_PA && amount <= MOST_PA && onAt(spans, time[row]) === FAN_ON;
  });
  return {
    timeMs: Float64Array.from(kept, (row) => time[row]),
    pressurePa: Float64Array.from(kept, (row) => Math.abs(pressure[row])),
    depthM: Float64Array.from(kept, (row) => grainDepthAt(bin, time[row]) ?? Number.NaN),
    fanSet: kept.map((row) => fanSetAt(fans, time[row])),
  };
}
