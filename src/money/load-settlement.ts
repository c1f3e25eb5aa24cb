import { assertRange } from '../base/errors.ts';
import type { MoistureSchedule } from './moisture-schedule.ts';
import { scheduleCharge } from './schedule-charge.ts';

/** What a load brings. Money in the currency of the price. */
export interface LoadSettlement {
  /** fraction of the wet weight that is not paid */
  shrink: number;
  /** bushels after shrink */
  paidBushels: number;
  /** paid bushels at the price */
  gross: number;
  /** of each schedule in the order given; 0 for a shrink, which has shown in `paidBushels` */
  charges: readonly number[];
  net: number;
}

/**
 * Settle a load by a buyer's schedules: shrink first, then charges on wet or on paid bushels.
 *
 * @param wetBushels      as delivered, 0 or more
 * @param moistureWb      of the load, fraction, wet basis, 0 to 0.6
 * @param pricePerBushel  money per bushel, 0 or more
 * @param schedules       the buyer's; those of weight add up
 * @param otherShrink     shrink stated elsewhere, fraction of the wet weight, 0 to 1
 * @returns               null where a schedule does not take the load
 * @throws                RangeError outside, on NaN and where shrink would take more than the whole
 */
export function loadSettlement(
  wetBushels: number,
  moistureWb: number,
  pricePerBushel: number,
  schedules: readonly MoistureSchedule[],
  otherShrink = 0,
): LoadSettlement | null {
  assertRange('wetBushels', wetBushels, 0, Number.MAX_VALUE);
  assertRange('pricePerBushel', pricePerBushel, 0, Number.MAX_VALUE);
  assertRange('otherShrink', otherShrink, 0, 1);
  const rates: number[] = [];
  for (const schedule of schedules) {
    const rate = scheduleCharge(schedule, moistureWb);
    if (rate === null) return null;
    rates.push(rate);
  }
  const shrink = rates.reduce((sum, rate, i) => (schedules[i].unit === 'weight' ? sum + rate : sum), otherShrink);
  assertRange('shrink', shrink, 0, 1);
  const paidBushels = wetBushels * (1 - shrink);
  const charges = rates.map((rate, i) => {
    const { unit, bushels } = schedules[i];
    if (unit === 'weight') return 0;
    return rate * (unit === 'price' ? pricePerBushel : 1) * (bushels === 'wet' ? wetBushels : paidBushels);
  });
  const gross = paidBushels * pricePerBushel;
  return { shrink, paidBushels, gross, charges, net: gross - charges.reduce((a, b) => a + b, 0) };
}
