/** A stamp read: local wall clock (`ms` as if it were UTC) or an instant (`ms` UTC). */
export interface Stamp {
  kind: 'local' | 'instant';
  ms: number;
  /** the text gave no time of day */
  dateOnly: boolean;
}

// The year stands first, so there is no doubt about the order: `/` and single digits are let pass too.
const ISO =
  /^(\d{4})([-/])(\d{1,2})\2(\d{1,2})(?:(?:[T ]|\s+)(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*(Z|UTC|[+-]\d{2}(?::?\d{2})?)?)?$/i;

/**
 * Read `2024-10-04`, `2024-10-04T13:00`, `2024-10-04 13:00:30.5`, each with `Z` or an offset if wanted.
 *
 * @returns null for any other text and for dates that do not exist (30 February, 25 o'clock); 24:00 is the next midnight
 * @source  ISO 8601-1:2019, and its common variant with a space (RFC 3339, 5.6)
 */
export function isoStamp(text: string): Stamp | null {
  const match = ISO.exec(text);
  if (match === null) return null;
  const [, year, , month, day, hour, minute, second, fraction, offset] = match;
  const h = Number(hour ?? 0);
  const m = Number(minute ?? 0);
  const s = Number(second ?? 0);
  if (h > 24 || m > 59 || s > 59 || (h === 24 && (m > 0 || s > 0))) return null;
  const midnight = localMidnight(Number(year), Number(month), Number(day));
  if (midnight === null) return null;
  const thousandths = fraction === undefined ? 0 : Math.floor(Number(`0.${fraction}`) * 1000 + 1e-6);
  const ms = midnight + ((h * 60 + m) * 60 + s) * 1000 + thousandths;
  if (offset === undefined) return { kind: 'local', ms, dateOnly: hour === undefined };
  const minutes = offsetMinutes(offset);
  return minutes === null ? null : { kind: 'instant', ms: ms - minutes * 60_000, dateOnly: false };
}

/** Midnight of a calendar day, ms as if UTC; null for a day that does not exist, and for years of fewer than four digits. */
export function localMidnight(year: number, month: number, day: number): number | null {
  if (year < 1000) return null;
  const ms = Date.UTC(year, month - 1, day);
  const date = new Date(ms);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? ms : null;
}

function offsetMinutes(text: string): number | null {
  if (/^(z|utc)$/i.test(text)) return 0;
  const hours = Number(text.slice(1, 3));
  const minutes = Number(text.slice(3).replace(':', '') || 0);
  // The widest offsets in use are -12:00 and +14:00.
  if (hours > 14 || minutes > 59) return null;
  return (text[0] === '-' ? -1 : 1) * (hours * 60 + minutes);
}
