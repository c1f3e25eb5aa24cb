import { describe, expect, it } from 'vitest';
import { checkZone } from '../../../src/season/checks/check-zone.ts';
import type { Season } from '../../../src/season/season.ts';

const told = (timeZone: string, longitudeDeg: number | null) =>
  checkZone({ site: { timeZone, longitudeDeg } } as unknown as Season);

// Longitudes of towns from memory of the map.
describe('a time zone against the longitude of the site', () => {
  it.each([
    ['America/Chicago', -93.6],
    ['America/Regina', -104.6],
    ['Europe/Madrid', -8.5],
    ['Asia/Shanghai', 75.9],
    ['Australia/Sydney', 148],
    ['America/Argentina/Buenos_Aires', -68.8],
    ['Pacific/Auckland', 175.3],
    ['Pacific/Kiritimati', -157.4],
  ])('%s at %f degrees is one place', (zone, longitude) => expect(told(zone, longitude)).toEqual([]));

  it.each([
    ['Asia/Kolkata', -92.6, '12 hours'],
    ['Europe/Berlin', -93.6, '7 hours'],
    ['UTC', -93.6, '6 hours'],
    // the sign forgotten
    ['America/Chicago', 93.6, '12 hours'],
  ])('%s at %f degrees is told, with what to check', (zone, longitude, said) => {
    const [finding] = told(zone, longitude);
    expect(finding).toMatchObject({ kind: 'clock', where: 'site', advice: expect.stringContaining('time_zone') });
    expect(finding.text).toContain(said);
  });

  it('is not asked where no longitude is stated', () => expect(told('Asia/Kolkata', null)).toEqual([]));
});
