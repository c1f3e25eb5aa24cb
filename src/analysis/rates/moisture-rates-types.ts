import type { Estimate } from '../../base/estimate.ts';

/** How fast moisture went in a part of the season. Positive where the fans took water out. */
export interface RatePeriod {
  /** `2024-10`; `season` for the whole */
  key: string;
  /** fan hours within it, between its first and last day of readings */
  fanHours: number;
  /** rests of the fan and days of readings that the line is drawn through */
  days: number;
  /** how many of these were read in still air */
  stillDays: number;
  /** points per 100 fan hours */
  perHundredFanHours: Estimate;
  /** fan hours and kWh for a point, taken out or, where the rate is below zero, put in; withheld where the rate may be zero, or can hardly be told from it */
  hoursPerPoint: Estimate;
  kwhPerPoint: Estimate;
}

/** One day of the figure: fan hours so far, points removed so far, and how far the readings may be off. */
export interface RateDay {
  dayMs: number;
  fanHours: number;
  points: number;
  low: number;
  high: number;
  stillAir: boolean;
}

/** How fast a bin's fans changed its moisture. */
export interface MoistureRates {
  /** the points from start to end over the fan hours between these moments */
  season: RatePeriod | null;
  /** by a robust line through all days of readings */
  line: RatePeriod | null;
  /** by local calendar month, rising; months without a fan hour are left out */
  months: readonly RatePeriod[];
  days: readonly RateDay[];
  notes: readonly string[];
  /** why there is no rate; null where there is one */
  why: string | null;
}
