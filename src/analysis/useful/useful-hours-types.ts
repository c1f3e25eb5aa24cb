import type { Estimate } from '../../base/estimate.ts';
import type { Span } from '../types.ts';

/** What the air of a fan hour could do to the bulk of the grain; `unknown`: nobody can tell; `empty`: no grain was in. */
export const HOUR_CLASSES = ['dry', 'rewet', 'cool', 'warm', 'little', 'unknown', 'empty'] as const;
export type HourClass = (typeof HOUR_CLASSES)[number];

/** What a fan hour was for the bin's goal. */
export const VERDICTS = ['for', 'against', 'neither', 'unknown'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** Fan hours of a part of the season: a month, three hours of the day, a kind of weather. */
export interface HourGroup {
  /** `2024-10`; the first hour of the band, `0` to `21`; `temperature band, humidity band` as indices, `2 1`; `none`: not known */
  key: string;
  /** fan hours, as the fan log tells them; the upper end holds its silence */
  hours: Estimate;
  forGoal: Estimate;
  against: Estimate;
  /** hours that nobody can class, with those of an empty bin */
  unclassed: number;
}

/** What each fan hour of a bin could do to the grain it met. */
export interface UsefulHours {
  /** from where on an hour counts as doing something, and whether season.yaml says so */
  limits: { moistureWb: number; temperatureK: number; stated: boolean };
  /** which effect names an hour that has both */
  first: 'moisture' | 'temperature';
  /** hours by class; they add up to the bin's fan hours, those withheld counting none */
  hours: Readonly<Record<HourClass, Estimate>>;
  /** hours that worked for the bin's goal, and against it */
  forGoal: Estimate;
  against: Estimate;
  /** hours against the goal over all fan hours, fraction */
  againstShare: Estimate;
  /** energy cost of the hours against the goal, each at its own price; no demand, connected load or heat */
  againstCost: Estimate;
  /** hours with the fan off in which the air could have worked for the goal while the grain was short of its target */
  offWouldHavePaid: Estimate;
  /** hours in which the air could dry and rewet the layer where it enters; null where no sensor hangs there */
  entryLayer: { dry: Estimate; rewet: Estimate; overdried: Estimate | null; heightM: number } | null;
  /** stretches of one class, rising; and those that would have paid with the fan off */
  stretches: readonly (Span & { of: HourClass })[];
  offStretches: readonly Span[];
  months: readonly HourGroup[];
  hoursOfDay: readonly HourGroup[];
  outdoor: readonly HourGroup[];
  /** where the air was told from, h, and the fan's warming where the weather told it */
  air: { plenumHours: number; weatherHours: number; warmingK: number; warmingFrom: 'plenum' | 'stated' | 'none' };
  /** what a reader must know, whole sentences */
  notes: readonly string[];
  /** why no hour could be classed; null where some could */
  why: string | null;
}

/** The part of hours of which nobody knows the part. */
export const NO_PART = 'none';
/** Ends of the bands of outdoor air, C and fraction. */
export const OUTDOOR_BANDS = { tempC: [0, 10, 20], rh: [0.6, 0.8] } as const;
/** Hours of the day that one row tells together. */
export const DAY_BAND_H = 3;
