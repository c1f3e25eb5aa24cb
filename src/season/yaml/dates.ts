import { instantsOf, localDayStart, type Zone } from '../../base/zone.ts';
import { checked } from './fields.ts';
import { show } from './show.ts';

interface Written {
  year: number;
  month: number;
  day: number;
  /** minutes after local midnight, and seconds; null for a date alone */
  clockMs: number | null;
  /** minutes that the stamp itself says its clock is ahead of UTC */
  offsetMinutes: number | null;
}

type Reading = { ok: true; written: Written } | { ok: false; reason: string };

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const STAMP = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}))?(?: ?(Z|[+-]\d{2}:\d{2}))?)?$/;

/** A local calendar date, `2024-10-04`. */
export function date(description: string) {
  return checked('SEASON_DATE', 'a date like 2024-10-04', (value) => readDate(value, DATE), {
    description,
    pattern: DATE.source,
  });
}

/** A date, or a date and local time, `2024-10-04 14:30`; `Z` or an offset overrules the site's zone. */
export function dateOrTime(description: string) {
  return checked(
    'SEASON_DATE',
    'a date like 2024-10-04 or a date and time like 2024-10-04 14:30',
    (value) => readDate(value, STAMP),
    { description, pattern: STAMP.source },
  );
}

function readDate(text: string, form: RegExp): Reading {
  const match = form.exec(text);
  const like = form === DATE ? '2024-10-04' : '2024-10-04 or 2024-10-04 14:30';
  if (match === null) {
    return { ok: false, reason: `is ${show(text)}; a date is written year-month-day, e.g. ${like}.` };
  }
  const [year, month, day, hour = 0, minute = 0, second = 0] = match.slice(1, 7).map((part) => Number(part ?? 0));
  const noon = new Date(Date.UTC(year, month - 1, day));
  if (noon.getUTCMonth() !== month - 1 || noon.getUTCDate() !== day || !(year >= 1950 && year <= 2150)) {
    return { ok: false, reason: `is ${show(text)}; there is no such day between 1950 and 2150. Write e.g. ${like}.` };
  }
  if (!(hour <= 23 && minute <= 59 && second <= 59)) {
    return { ok: false, reason: `is ${show(text)}; times run from 00:00 to 23:59.` };
  }
  const clockMs = match[4] === undefined ? null : ((hour * 60 + minute) * 60 + second) * 1000;
  return { ok: true, written: { year, month, day, clockMs, offsetMinutes: offsetOf(match[7]) } };
}

function offsetOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (text === 'Z') return 0;
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6));
  return text.startsWith('-') ? -minutes : minutes;
}

export type InstantResult = { ok: true; ms: number } | { ok: false; reason: string };

/** The instant (ms UTC) of a checked date or stamp; a date alone is its first local minute, a repeated hour its first pass. */
export function readInstant(text: string, zone: Zone): InstantResult {
  const reading = readDate(text, STAMP);
  if (!reading.ok) return reading;
  const { year, month, day, clockMs, offsetMinutes } = reading.written;
  if (clockMs === null) return { ok: true, ms: localDayStart(zone, year, month, day) };
  const localMs = Date.UTC(year, month - 1, day) + clockMs;
  if (offsetMinutes !== null) return { ok: true, ms: localMs - offsetMinutes * 60_000 };
  const [first] = instantsOf(zone, localMs);
  if (first !== undefined) return { ok: true, ms: first };
  return { ok: false, reason: `is ${show(text)}; clocks in ${zone.name} jump over that time. Write an hour later.` };
}

/** The first instant after a checked local date. */
export function dayAfter(text: string, zone: Zone): number {
  const reading = readDate(text, DATE);
  if (!reading.ok) throw new Error(`unchecked date: ${reading.reason}`);
  const { year, month, day } = reading.written;
  return localDayStart(zone, year, month, day + 1);
}

/** The instant of a text that has passed all checks. */
export function instant(text: string, zone: Zone): number {
  const result = readInstant(text, zone);
  if (!result.ok) throw new Error(`unchecked date: ${result.reason}`);
  return result.ms;
}
