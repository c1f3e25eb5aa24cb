import { type Zone, zoneOf } from '../../base/zone.ts';

/**
 * The zone that a file's local stamps are read in.
 *
 * @param timeZone  of the file: IANA name, `UTC`, `local standard` (the site's zone without daylight saving), null for the site's
 * @param siteZone  IANA name
 * @throws          RangeError for a name that is not known
 */
export function fileZone(timeZone: string | null, siteZone: string): Zone {
  if (timeZone === null) return rememberedZone(siteZone, false);
  return isLocalStandard(timeZone) ? rememberedZone(siteZone, true) : rememberedZone(timeZone, false);
}

export function isLocalStandard(timeZone: string | null): boolean {
  return timeZone !== null && /^local[ _-]standard$/i.test(timeZone.trim());
}

const zones = new Map<string, Zone>();

/** A zone remembers its offsets; all files of a season share them. */
export function rememberedZone(name: string, standard: boolean): Zone {
  const key = `${name} ${standard}`;
  const zone = zones.get(key) ?? zoneOf(name, standard);
  zones.set(key, zone);
  return zone;
}
