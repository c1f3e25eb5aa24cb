import { zoneOf } from '../../base/zone.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';

const HOUR_MS = 3_600_000;
const DEGREES_AN_HOUR = 15;
/** Clocks are set by law up to three hours off the sun; more is most often another place's zone. From memory of the zone map. */
export const ZONE_OFF_SUN_H = 3.5;

/** A time zone that does not fit the longitude of the site: all local hours, and with them prices by the clock, would be shifted. */
export function checkZone({ site }: Season): Finding[] {
  if (site.longitudeDeg === null) return [];
  const zone = zoneOf(site.timeZone);
  // The lesser of winter and summer is the zone's own time in either half of the earth.
  const offsets = [0, 6].map((month) => zone.offsetMs(Date.UTC(2024, month, 1)) / HOUR_MS);
  const apart = Math.abs(((Math.min(...offsets) - site.longitudeDeg / DEGREES_AN_HOUR + 36) % 24) - 12);
  if (apart <= ZONE_OFF_SUN_H) return [];
  return [
    {
      kind: 'clock',
      where: 'site',
      binId: null,
      fromMs: null,
      toMs: null,
      cells: 0,
      text: `The clock of ${site.timeZone} is ${Math.round(apart)} hours off the sun at longitude ${site.longitudeDeg}: hours of the day, and prices by them, may be of another place.`,
      advice: 'Check time_zone and longitude (east is positive) under site in season.yaml.',
    },
  ];
}
