import { z } from 'zod';
import type { Estimate } from '../../base/estimate.ts';
import { withheld } from '../../base/estimate.ts';

// An older kit's summary.json has fewer keys and a newer one more: only what is held beside this season has to be there.
const number = z.number().nullable();
const interval = z.tuple([z.number(), z.number()]).nullable().optional();
const why = z.string().nullable().optional();

const bin = z.looseObject({
  id: z.string(),
  crop: z.string(),
  goal: z.enum(['dry', 'cool', 'condition', 'hold']),
  fan: z.looseObject({
    hours: number,
    hoursInterval: interval,
    energyKwh: number,
    energyKwhInterval: interval,
    cost: number,
    costInterval: interval,
    why,
  }),
  moisture: z.looseObject({ pointsRemoved: number, interval, why }),
  costPerPoint: z.looseObject({
    value: number,
    interval,
    perBushelPoint: number,
    perBushelPointInterval: interval,
    why,
  }),
});

/** What of a `summary.json` is set beside another season. */
export const PREVIOUS_SHAPE = z.looseObject({
  season: z.string(),
  currency: z.string().optional(),
  bins: z.array(bin),
});

export type SummaryText = z.infer<typeof PREVIOUS_SHAPE>;

/** One bin of a season, as another is held against it. Money in the season's currency. */
export interface BinNumbers {
  id: string;
  crop: string;
  goal: string;
  hours: Estimate;
  energyKwh: Estimate;
  cost: Estimate;
  points: Estimate;
  costPerPoint: Estimate;
  perBushelPoint: Estimate;
}

/** A season's numbers bin by bin. */
export interface SeasonNumbers {
  title: string;
  /** null where the summary does not say it */
  currency: string | null;
  bins: readonly BinNumbers[];
}

/** The numbers of a summary.json, this kit's or an earlier one's. */
export function seasonNumbers(summary: SummaryText): SeasonNumbers {
  return {
    title: summary.season,
    currency: summary.currency ?? null,
    bins: summary.bins.map((one) => {
      const of = (
        value: number | null,
        range: [number, number] | null | undefined,
        reason: typeof one.fan.why,
      ): Estimate =>
        value === null ? withheld(reason ?? 'Not known.') : { value, interval: range ?? null, why: null };
      const { fan, moisture, costPerPoint } = one;
      return {
        id: one.id,
        crop: one.crop,
        goal: one.goal,
        hours: of(fan.hours, fan.hoursInterval, fan.why),
        energyKwh: of(fan.energyKwh, fan.energyKwhInterval, fan.why),
        cost: of(fan.cost, fan.costInterval, fan.why),
        points: of(moisture.pointsRemoved, moisture.interval, moisture.why),
        costPerPoint: of(costPerPoint.value, costPerPoint.interval, costPerPoint.why),
        perBushelPoint: of(costPerPoint.perBushelPoint, costPerPoint.perBushelPointInterval, costPerPoint.why),
      };
    }),
  };
}
