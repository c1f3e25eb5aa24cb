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

/** `Oct 2024` for `2024-10`. */
export function monthText(month: string): string {
  const [year, number] = month.split('-');
  return `${MONTHS[Number(number) - 1]} ${year}`;
}
