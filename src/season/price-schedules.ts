import type { MoistureSchedule } from '../money/moisture-schedule.ts';
import type { GrainPrice, PriceSchedule } from './season.ts';

/** `shrink` and `discount` of a price, written as schedules: so much for each point above the base, without steps. */
const PLAIN = { perPoints: 1, stepPoints: null, banding: 'cumulative', bushels: 'wet', rejectOverWb: null } as const;

/**
 * Everything that a crop's price takes off with moisture, as one list that `loadSettlement` takes: the flat shrink and discount first, then the
 * stated schedules. Without `base_moisture` the two flat ones begin nowhere and are left out.
 */
export function priceSchedules(price: GrainPrice): PriceSchedule[] {
  const { baseMoistureWb, shrinkPerPoint, discountPerBushelPoint, schedules = [] } = price;
  const flat = (name: string, rate: number | null, unit: MoistureSchedule['unit']): PriceSchedule[] =>
    rate === null || baseMoistureWb === null
      ? []
      : [
          {
            name,
            schedule: { ...PLAIN, baseWb: baseMoistureWb, bands: [{ toWb: Number.POSITIVE_INFINITY, rate }], unit },
          },
        ];
  return [
    ...flat('shrink', shrinkPerPoint, 'weight'),
    ...flat('discount', discountPerBushelPoint, 'money'),
    ...schedules,
  ];
}
