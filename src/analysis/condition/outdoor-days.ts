import { localDayOf, type Zone } from '../../base/zone.ts';
import type { AirLog } from '../fronts/air-log.ts';

export const DAY_MS = 86_400_000;
/** Steel and the air under a roof in the sun over the day's outdoor mean, K (from memory). */
export const SUN_K = 6;
/** Over so many days the outdoor mean is taken that stored grain is held against (common practice), and of how many readings are needed. */
const TRAILING_DAYS = 30;
const LEAST_DAYS = 20;

/** Outdoor air by local day: local midnight as if UTC to the day's mean, C. */
export type OutdoorDays = ReadonlyMap<number, number>;

export function outdoorDays({ timeMs, tempC }: AirLog, zone: Zone): OutdoorDays {
  const sums = new Map<number, { sum: number; count: number }>();
  for (let i = 0; i < timeMs.length; i++) {
    const day = localDayOf(zone, timeMs[i]);
    const known = sums.get(day) ?? { sum: 0, count: 0 };
    known.sum += tempC[i];
    known.count += 1;
    sums.set(day, known);
  }
  return new Map([...sums].map(([day, { sum, count }]) => [day, sum / count]));
}

/** Mean of the outdoor air on the local day of each time, C, [times]; NaN where not known. */
export function outdoorSteps(days: OutdoorDays, atMs: Float64Array, zone: Zone): Float64Array {
  return atMs.map((ms) => days.get(localDayOf(zone, ms)) ?? Number.NaN);
}

/** Mean of the 30 days before a local day, C; null where fewer than 20 of them are known. */
export function meanBefore(days: OutdoorDays, dayMs: number): number | null {
  const known = daysBefore(days, dayMs, TRAILING_DAYS);
  return known.length < LEAST_DAYS ? null : known.reduce((sum, one) => sum + one, 0) / known.length;
}

/** The warmest of some days up to a local day, that day in; null where one of them is not known. */
export function warmestOf(days: OutdoorDays, dayMs: number, count: number): number | null {
  const known = daysBefore(days, dayMs + DAY_MS, count);
  return known.length < count ? null : Math.max(...known);
}

function daysBefore(days: OutdoorDays, dayMs: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => days.get(dayMs - (i + 1) * DAY_MS)).filter((one) => one !== undefined);
}
