import type { Estimate } from '../../base/estimate.ts';
import type { Span } from '../types.ts';
import type { BinLayers } from './layer-types.ts';
import type { PointsTime } from './points-time.ts';
import type { MoistureStages } from './stage-types.ts';
import type { TicketsHeld } from './ticket-agreement-types.ts';

/** One sensor's part in a start or end mean. */
export interface SensorShare {
  cable: string;
  sensor: number;
  heightM: number;
  /** share of the bin's dry matter, of those used; sums to 1 */
  share: number;
  startWb: number | null;
  endWb: number | null;
  startC: number | null;
  endC: number | null;
}

/** A mean over a window of readings. */
export interface MomentMean {
  /** wet basis, fraction (moisture) or C (temperature) */
  value: number | null;
  window: Span | null;
  /** true: all readings after the fan stood still two hours or more */
  stillAir: boolean;
  readings: number;
  sensors: number;
  /** the same from readings with the fan running, to show beside it; null where there are none */
  fanOn: number | null;
  /**
   * 90 % interval of the value, with the sensors' own errors, which do not cancel in a single moment; of a temperature
   * lopsided where the grain beyond the outermost sensors may have followed the weather; null where it cannot be told
   */
  interval?: [number, number] | null;
  /** moisture only: what the value was read from; null where there is none */
  from?: 'sensors' | 'tickets' | 'stated' | null;
}

export interface BinMoisture {
  /** wet basis, fractions */
  start: MomentMean;
  end: MomentMean;
  /** points, wet basis; positive when removed */
  pointsRemoved: Estimate;
  /** points per 100 fan hours, those of `pointsTime` */
  perHundredFanHours: Estimate;
  /** from the moment of the start to that of the end; left out where nothing was read */
  pointsTime?: PointsTime;
  shares: readonly SensorShare[];
  /** standard errors in points that make up the interval, by cause, and the degrees of freedom */
  errorParts: readonly { cause: string; sd: number }[];
  /** the same for the moisture at the end alone, points */
  endParts?: readonly { cause: string; sd: number }[];
  degreesOfFreedom: number | null;
  /** bottom, middle and top third, and what an unload brings */
  layers?: BinLayers;
  /** sensors and tickets contradict each other, so the tickets tell both moments */
  ticketsAlone?: boolean;
  /** sensors against scale tickets */
  tickets?: TicketsHeld;
  /** by the times between which grain came or went; null where the depth did not change */
  stages?: MoistureStages | null;
  /** each cable's own points removed */
  cables: readonly { cable: string; points: number; weight: number }[];
  overdryingLossBushels: Estimate;
  overdryingLoss: Estimate;
  /** weighted mean moisture by day, for the figure; low and high: 10 and 90 % of the grain, by sensor; fractions */
  daily: readonly {
    dayMs: number;
    mean: number | null;
    low: number | null;
    high: number | null;
    stillAir: boolean;
    fanHours: number;
  }[];
  notes: readonly string[];
  why: string | null;
}

export interface BinTemperature {
  start: MomentMean;
  end: MomentMean;
  why: string | null;
}
