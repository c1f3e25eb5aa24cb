import type { BedSpec } from '../bed/bed.ts';
import type { Blower } from './blower.ts';
import type { Hours } from './hours.ts';

/** From `hour` on the grain stands so deep. */
export interface LevelStep {
  /** counted from the first of `Hours` */
  hour: number;
  depthM: number;
  /** state of grain that comes in: degC, fraction of dry matter */
  tempC: number;
  moistureDb: number;
  blower: Blower;
}

/** A bin's season as plain numbers: what a run needs beside the strategy. */
export interface RunSpec {
  bed: BedSpec;
  floorAreaM2: number;
  hours: Hours;
  /** rising hours, the first at the run's first hour */
  levels: readonly LevelStep[];
  /** state at the first hour in place of the first level's, [columns x layers] of `bed`; left out: uniform */
  start?: { tempC: Float64Array; moistureDb: Float64Array };
  /** first hour after the run, at most the length of `hours` */
  endHour: number;
  /** hour from which the strategy holds sway and hours, energy and money count (the bin is filled); 0 when left out */
  fromHour?: number;
  /** what stands over the outdoor air, K: headspace by day and sun, wall by sun; 0 when left out */
  headspaceK?: number;
  wallK?: number;
  /** steps of the bed in an hour, whole; weather and what the fan does stand for the hour. 1 when left out */
  stepsAnHour?: number;
  /** as logged: 1 in the hours in which the heater burned, [hours]; left out: in those of the fan */
  burnt?: Uint8Array;
  goal: 'dry' | 'cool' | 'condition' | 'hold';
  targetWb: number | null;
  targetC: number | null;
}

export function hasHeater({ levels }: RunSpec): boolean {
  return levels.some(({ blower }) => blower.heaterK > 0);
}
