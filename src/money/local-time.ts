import { localDayStart, toLocalMs, type Zone } from '../base/zone.ts';

export const HOUR_MS = 3_600_000;

/** Where the site's clock stands at an instant: calendar day, weekday and minute of the day. */
export interface LocalMoment {
  year: number;
  /** 1 to 12 */
  month: number;
  /** 1 to 31 */
  day: number;
  /** 1 (Monday) to 7 (Sunday) */
  weekday: number;
  /** minutes since local midnight by the wall clock */
  minute: number;
}

export function localMoment(zone: Zone, utcMs: number): LocalMoment {
  const local = new Date(toLocalMs(zone, utcMs));
  return {
    year: local.getUTCFullYear(),
    month: local.getUTCMonth() + 1,
    day: local.getUTCDate(),
    weekday: local.getUTCDay() === 0 ? 7 : local.getUTCDay(),
    minute: local.getUTCHours() * 60 + local.getUTCMinutes() + local.getUTCSeconds() / 60,
  };
}

/** `2024-10`: the local calendar month of an instant. */
export function monthKey(zone: Zone, utcMs: number): string {
  return new Date(toLocalMs(zone, utcMs)).toISOString().slice(0, 7);
}

/** The first instant of the local day after the one in which an instant lies. */
export function nextLocalDay(zone: Zone, utcMs: number): number {
  const { year, month, day } = localMoment(zone, utcMs);
  return localDayStart(zone, year, month, day + 1);
}

/** The local calendar months that [fromMs, toMs) touches, rising: key, first instant, first instant after. */
export function localMonths(
  zone: Zone,
  fromMs: number,
  toMs: number,
): { month: string; fromMs: number; toMs: number }[] {
  const months: { month: string; fromMs: number; toMs: number }[] = [];
  if (!(toMs > fromMs)) return months;
  const { year, month } = localMoment(zone, fromMs);
  for (let k = month; ; k++) {
    const start = localDayStart(zone, year, k, 1);
    if (start >= toMs) return months;
    const key = new Date(Date.UTC(year, k - 1, 1)).toISOString().slice(0, 7);
    months.push({ month: key, fromMs: start, toMs: localDayStart(zone, year, k + 1, 1) });
  }
}
