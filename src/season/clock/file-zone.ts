import { type Zone, zoneOf } from '../../base/zone.ts';

/**
 * The zone that a file's local stamps are read in.
 *
 * @param timeZone  of the file: IANA name, `UTC`, `local standard` (the site's zone without daylight saving), null for the site's
 * @param siteZone  IANA name
 * @throws          RangeError for a name that is not known
 */
export function fileZone(timeZone: string | null, siteZone: string): Zone {
  if (timeZone === null) return zoneOf(siteZone);
  return isLocalStandard(timeZone) ? zoneOf(siteZone, true) : zoneOf(timeZone);
}

export function isLocalStandard(timeZone: string | null): boolean {
  return timeZone !== null && /^local[ _-]standard$/i.test(timeZone.trim());
}
