import type * as z from 'zod';
import type { Season } from '../season.ts';
import { checked, map, number } from './fields.ts';
import { quantity, siOrNull } from './quantity.ts';
import { isZone, zoneText } from './zone-name.ts';

export const siteSchema = (currency: string) =>
  map(
    {
      latitude: number('degrees, north is positive', { min: -90, max: 90 }).optional(),
      longitude: number('degrees, east is positive', { min: -180, max: 180 }).optional(),
      elevation: quantity('length', currency, 'height above the sea, e.g. 1050 ft', {
        min: -450,
        max: 6000,
        words: 'it must lie between -450 m and 6000 m',
      }).optional(),
      time_zone: checked(
        'SEASON_ZONE',
        'an IANA time zone, e.g. America/Chicago',
        (name) => (isZone(name) ? { ok: true } : { ok: false, reason: zoneText(name) }),
        { description: 'IANA name, e.g. America/Chicago; the default zone of every file' },
      ),
    },
    'where the bins stand',
  );

type SiteText = z.infer<ReturnType<typeof siteSchema>>;

export function toSite(text: SiteText, currency: string): Season['site'] {
  return {
    latitudeDeg: text.latitude === undefined ? null : Number(text.latitude),
    longitudeDeg: text.longitude === undefined ? null : Number(text.longitude),
    elevationM: siOrNull('length', text.elevation, currency),
    timeZone: text.time_zone,
  };
}
