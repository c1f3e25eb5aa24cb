import type * as z from 'zod';
import { perLegalBushel } from '../../base/per-grain.ts';
import { cropOf } from '../../grain/crops.ts';
import type { PriceSchedule } from '../season.ts';
import { choice, list, map, text } from './fields.ts';
import { MOISTURE, quantity, si, siOrNull } from './quantity.ts';
import { points, rate, readPoints, readRate, type ScheduleUnit } from './schedule-rate.ts';

export const scheduleSchema = (currency: string) =>
  map(
    {
      name: text('what it is called, e.g. drying charge').optional(),
      above: quantity(
        'moisture',
        currency,
        'nothing is taken off up to here; base_moisture when left out',
        MOISTURE,
      ).optional(),
      rate: rate(currency).optional(),
      rates: list(
        map(
          {
            up_to: quantity(
              'moisture',
              currency,
              'moisture up to which the rate holds; left out of the last',
              MOISTURE,
            ).optional(),
            rate: rate(currency),
          },
          'a rate and how far it holds',
        ),
        'rates by moisture, rising',
        'a list of rates, e.g. [{ up_to: 20 %, rate: 0.05 USD/bu }, { rate: 0.02 USD/bu }]',
        1,
      ).optional(),
      per: points('points that a rate is for; 1 point when left out').optional(),
      step: points(
        'points counted at a time, a started step as a whole one; the moisture as it was read when left out',
      ).optional(),
      points_by: choice(
        ['own rate', 'last rate'],
        'with rates: each point by the rate that holds there (own rate, when left out), or all points by the rate that the load reaches',
      ).optional(),
      bushels: choice(
        ['wet', 'dry'],
        'counted on bushels as delivered (wet, when left out) or after shrink',
      ).optional(),
      refuse_above: quantity('moisture', currency, 'wetter loads are not taken', MOISTURE).optional(),
    },
    'a deduction that rises with moisture',
  );

export type ScheduleText = z.infer<ReturnType<typeof scheduleSchema>>;

/** @param base  `base_moisture` of the crop, for a schedule that says no `above` */
export function toSchedule(
  given: ScheduleText,
  base: string | undefined,
  currency: string,
  crop: string,
): PriceSchedule {
  const pointsOf = (value: string | undefined): number | null => {
    const read = value === undefined ? null : readPoints(value);
    return read?.ok ? read.points : null;
  };
  let unit: ScheduleUnit = 'money';
  const rates = given.rates ?? [{ rate: given.rate as string, up_to: undefined }];
  const bands = rates.map((one) => {
    const read = readRate(one.rate, currency);
    if (!read.ok) throw new Error(`unchecked rate: ${read.reason}`);
    unit = read.unit;
    return {
      toWb: one.up_to === undefined ? Number.POSITIVE_INFINITY : si('moisture', one.up_to, currency),
      rate: read.of === 'kg' ? perLegalBushel({ amount: read.rate, of: 'kg' }, cropOf(crop).legalBushelKg) : read.rate,
    };
  });
  return {
    name: given.name ?? null,
    schedule: {
      baseWb: si('moisture', (given.above ?? base) as string, currency),
      perPoints: pointsOf(given.per) ?? 1,
      stepPoints: pointsOf(given.step),
      bands,
      banding: given.points_by === 'last rate' ? 'reached' : 'cumulative',
      unit,
      bushels: given.bushels ?? 'wet',
      rejectOverWb: siOrNull('moisture', given.refuse_above, currency),
    },
  };
}
