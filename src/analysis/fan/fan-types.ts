import type { HeaterUse } from '../energy/heater-use.ts';
import type { Span } from '../types.ts';

export const FAN_OFF = 0;
export const FAN_ON = 1;
export const FAN_UNKNOWN = 2;

/** A fan through time: spans that follow each other without hole or overlap. Each array is [spans]. */
export interface FanSpans {
  startMs: Float64Array;
  endMs: Float64Array;
  /** FAN_OFF, FAN_ON or FAN_UNKNOWN */
  state: Uint8Array;
  /** mean electric power, W; 0 when off, NaN when unknown */
  powerW: Float64Array;
  /** the earliest and the latest moment at which each span may have begun, ms UTC; left out where that is startMs */
  startFromMs?: Float64Array;
  startToMs?: Float64Array;
  /** [samples], ms UTC, rising: when the log that told the runs was sampled; left out where none was */
  sampledMs?: Float64Array;
}

export type EnergySource = 'meter' | 'power' | 'current' | 'nameplate';

export type RunSource = 'current' | 'power' | 'meter' | 'state' | 'run_hours';

/** One fan's season. */
export interface FanSeason {
  fanId: string;
  /** null: no log of this fan */
  runsFrom: RunSource | null;
  energyFrom: EnergySource | null;
  spans: FanSpans;
  onHours: number;
  unknownHours: number;
  starts: number;
  energyKwh: number;
  /** relative standard error of energy and power, by the way they were measured */
  energyRelSd: number;
  /** how on was told from off, how the power was had, in words for the page */
  how: string;
  /** what was found wrong with the log and its meters, whole sentences */
  notes?: readonly string[];
  /** stretches whose running hours are known from a meter, but not when in them they were: spread evenly */
  spread?: readonly Span[];
  /** why its log is left out, a whole sentence: what else was logged contradicts it; left out where it stands */
  doubt?: string;
  /** why its measured power and its nameplate cannot both be right, whole sentences; left out where they can */
  misfit?: string;
  /** standard error of onHours, h */
  onHoursSd?: number;
  /** when its heater burned; left out where no log tells */
  heater?: HeaterUse;
}
