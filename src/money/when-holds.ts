import type { LocalMoment } from './local-time.ts';
import type { When } from './tariff.ts';

/**
 * Whether a rule holds at a moment. Month and weekday are those of the local day in which the moment itself lies, also
 * in a window that runs across midnight: `days: fri, hours: 22:00-06:00` holds Friday 00:00-06:00 and 22:00-24:00.
 */
export function whenHolds(when: When | null, at: LocalMoment): boolean {
  if (when === null) return true;
  if (when.months !== null && !when.months.has(at.month)) return false;
  if (when.days !== null && !when.days.has(at.weekday)) return false;
  if (when.hours === null) return true;
  return when.hours.some(([from, to]) =>
    from < to ? at.minute >= from && at.minute < to : at.minute >= from || at.minute < to,
  );
}
