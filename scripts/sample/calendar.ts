export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

const STANDARD = -6 * HOUR;

/** Date in a month of the nth Sunday, month counted from 0. */
function nthSunday(year: number, month: number, nth: number): number {
  const firstWeekday = new Date(Date.UTC(year, month, 1)).getUTCDay();
  return 1 + ((7 - firstWeekday) % 7) + 7 * (nth - 1);
}

/**
 * Local minus UTC in the US Central zone, ms. Written out (daylight time from the second Sunday of March to the first of November,
 * 02:00 local; Energy Policy Act of 2005) so that the truth does not lean on the kit's zones.
 */
export function centralOffset(utcMs: number): number {
  const year = new Date(utcMs).getUTCFullYear();
  const spring = Date.UTC(year, 2, nthSunday(year, 2, 2), 8);
  const fall = Date.UTC(year, 10, nthSunday(year, 10, 1), 7);
  return utcMs >= spring && utcMs < fall ? STANDARD + HOUR : STANDARD;
}

/** Wall clock as a date whose UTC fields show it. */
export const localClock = (utcMs: number): Date => new Date(utcMs + centralOffset(utcMs));

/** Instant of `2024-10-06` or `2024-10-06 16:00`, local; the first of two in fall's repeated hour. */
export function fromLocal(text: string): number {
  const [date, clock = '00:00'] = text.split(' ');
  const wall = Date.parse(`${date}T${clock}:00Z`);
  const daylight = wall - (STANDARD + HOUR);
  return centralOffset(daylight) === STANDARD + HOUR ? daylight : wall - STANDARD;
}

const two = (value: number) => String(value).padStart(2, '0');

/** `2024-10-06 16:00` of a wall clock */
export function isoMinute(clock: Date): string {
  return `${isoDay(clock)} ${two(clock.getUTCHours())}:${two(clock.getUTCMinutes())}`;
}

export function isoDay(clock: Date): string {
  return `${clock.getUTCFullYear()}-${two(clock.getUTCMonth() + 1)}-${two(clock.getUTCDate())}`;
}

/** `10/06/2024 04:00 PM` */
export function usMinute(clock: Date): string {
  const hour = clock.getUTCHours();
  const day = `${two(clock.getUTCMonth() + 1)}/${two(clock.getUTCDate())}/${clock.getUTCFullYear()}`;
  return `${day} ${two(hour % 12 === 0 ? 12 : hour % 12)}:${two(clock.getUTCMinutes())} ${hour < 12 ? 'AM' : 'PM'}`;
}

export const localText = (utcMs: number): string => isoMinute(localClock(utcMs));
export const standardClock = (utcMs: number): Date => new Date(utcMs + STANDARD);
/** `2024-10-06T21:00Z` */
export const utcText = (utcMs: number): string => `${new Date(utcMs).toISOString().slice(0, 16)}Z`;
