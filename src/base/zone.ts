import { IANAZone } from 'luxon';

const QUARTER_MS = 900_000;
const DAY_MS = 96 * QUARTER_MS;

/** A time zone with its offsets remembered by the day: every analysis asks for them by the hundred thousand. */
export interface Zone {
  name: string;
  /** local minus UTC, ms, at an instant (ms UTC) */
  offsetMs(utcMs: number): number;
}

/** Offset that the site keeps outside daylight saving time: that of 1 January or 1 July, whichever is less. */
function standardOffsetMs(zone: IANAZone, utcMs: number): number {
  const year = new Date(utcMs).getUTCFullYear();
  return Math.min(zone.offset(Date.UTC(year, 0, 1)), zone.offset(Date.UTC(year, 6, 1))) * 60_000;
}

/**
 * @param name      an IANA name, or `UTC`
 * @param standard  true: the zone's standard time all year, no daylight saving
 * @throws          RangeError for a name that is not known
 */
export function zoneOf(name: string, standard = false): Zone {
  const zone = IANAZone.create(name === 'UTC' ? 'Etc/UTC' : name);
  if (!zone.isValid) throw new RangeError(`"${name}" is no IANA time zone, e.g. America/Chicago`);
  const worked = (utcMs: number) => (standard ? standardOffsetMs(zone, utcMs) : zone.offset(utcMs) * 60_000);
  /** of a day within which it stays; NaN: it changes, see `quarters` */
  const days = new Map<number, number>();
  const quarters = new Map<number, number>();
  return {
    name: standard ? `${name}, standard time` : name,
    offsetMs(utcMs) {
      const day = Math.floor(utcMs / DAY_MS);
      let offset = days.get(day);
      if (offset === undefined) {
        offset = worked(day * DAY_MS);
        // No zone changes and changes back within a day.
        if (offset !== worked((day + 1) * DAY_MS)) offset = Number.NaN;
        days.set(day, offset);
      }
      if (!Number.isNaN(offset)) return offset;
      // Offsets change on quarter hours at the finest.
      const quarter = Math.floor(utcMs / QUARTER_MS);
      let within = quarters.get(quarter);
      if (within === undefined) {
        within = worked(quarter * QUARTER_MS);
        quarters.set(quarter, within);
      }
      return within;
    },
  };
}

/** Local wall clock as if it were UTC: read its fields with the getUTC… methods of Date. */
export function toLocalMs(zone: Zone, utcMs: number): number {
  return utcMs + zone.offsetMs(utcMs);
}

/** The instants (0, 1 or 2, rising) at which the local clock shows `localMs`. None in spring's missing hour, two in autumn's repeated one. */
export function instantsOf(zone: Zone, localMs: number): number[] {
  const offsets = new Set([zone.offsetMs(localMs - DAY_MS), zone.offsetMs(localMs + DAY_MS)]);
  return [...offsets]
    .map((offset) => localMs - offset)
    .filter((utcMs) => utcMs + zone.offsetMs(utcMs) === localMs)
    .sort((a, b) => a - b);
}

/** The first instant of a local calendar day, ms UTC. `month` counts from 1; day and month may run over. */
export function localDayStart(zone: Zone, year: number, month: number, day: number): number {
  const localMs = Date.UTC(year, month - 1, day);
  const found = instantsOf(zone, localMs);
  if (found.length > 0) return found[0];
  // Midnight itself is missing (some zones change at 00:00): the day starts where the clock jumps to.
  return localMs - zone.offsetMs(localMs - DAY_MS);
}

/** The local day of an instant: its midnight as if UTC, ms. */
export function localDayOf(zone: Zone, utcMs: number): number {
  return Math.floor(toLocalMs(zone, utcMs) / DAY_MS) * DAY_MS;
}

/** The first instant of a local day that `localDayOf` names, ms UTC. */
export function startOfLocalDay(zone: Zone, localDayMs: number): number {
  const date = new Date(localDayMs);
  return localDayStart(zone, date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
}
