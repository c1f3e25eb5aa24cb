import { z } from 'zod';
import { interval, number, why } from '../summary-cells.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import { noHours } from '../useful/useful-summary.ts';

/** A period of `rates` of a bin in `summary.json`. */
export const RATE_SHAPE = z.strictObject({
  period: z
    .string()
    .describe('season: from start to end; line: by a robust line through all days; else the local month, 2024-10'),
  fanHours: number.describe('h, measured; of season and line those between the moistures at start and end'),
  perHundredFanHours: number.describe('points removed in 100 h'),
  perHundredFanHoursInterval: interval,
  hoursPerPoint: number.describe('h for a point'),
  hoursPerPointInterval: interval,
  kwhPerPoint: number.describe('kWh for a point'),
  kwhPerPointInterval: interval,
  why,
});

export function ratesSummary(review: BinReview): { rates: z.infer<typeof RATE_SHAPE>[]; ratesWhy: string | null } {
  const { rates } = review;
  if (rates === null || rates === undefined) return { rates: [], ratesWhy: noHours(review) };
  const periods = [rates.season, rates.line, ...rates.months].filter((one) => one !== null);
  return {
    rates: periods.map((one) => ({
      period: one.key,
      fanHours: plain(one.fanHours),
      ...both('perHundredFanHours', one.perHundredFanHours),
      ...both('hoursPerPoint', one.hoursPerPoint),
      ...both('kwhPerPoint', one.kwhPerPoint),
      why: reason(null, one.perHundredFanHours, one.hoursPerPoint, one.kwhPerPoint),
    })),
    ratesWhy: rates.why ?? (periods.length === 0 ? noHours(review) : null),
  };
}
