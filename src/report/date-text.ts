import { toLocalMs, type Zone } from '../base/zone.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

export function monthName(month: number): string {
  return MONTHS[month - 1];
}

/** `4 Oct 2024`, by the clock of the zone. */
export function dateText(zone: Zone, utcMs: number): string {
  const local = new Date(toLocalMs(zone, utcMs));
  return `${local.getUTCDate()} ${MONTHS[local.getUTCMonth()]} ${local.getUTCFullYear()}`;
}

/** `4 Oct 2024 13:05`, by the clock of the zone. */
export function dateTimeText(zone: Zone, utcMs: number): string {
  const local = new Date(toLocalMs(zone, utcMs));
  const two = (value: number) => String(value).padStart(2, '0');
  return `${dateText(zone, utcMs)} ${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`;
}

/** `2024-10-04`, by the clock of the zone. */
export function isoDay(zone: Zone, utcMs: number): string {
  return new Date(toLocalMs(zone, utcMs)).toISOString().slice(0, 10);
}

/** `2024-10-04T13:05-05:00`, by the clock of the zone, with its offset: the hour that autumn repeats stays two. */
export function isoMoment(zone: Zone, utcMs: number): string {
  const minutes = Math.round(zone.offsetMs(utcMs) / 60_000);
  const two = (value: number) => String(value).padStart(2, '0');
  const offset = `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
  return `${new Date(toLocalMs(zone, utcMs)).toISOString().slice(0, 16)}${offset}`;
}

/** `Oct 2024` for `2024-10`. */
export function monthText(month: string): string {
  const [year, number] = month.split('-');
  return `${MONTHS[Number(number) - 1]} ${year}`;
}
