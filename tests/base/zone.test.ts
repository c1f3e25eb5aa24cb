import { describe, expect, it } from 'vitest';
import { instantsOf, localDayOf, localDayStart, startOfLocalDay, toLocalMs, zoneOf } from '../../src/base/zone.ts';

const chicago = zoneOf('America/Chicago');

// US rule since 2007 (Energy Policy Act of 2005, sec. 110): second Sunday of March, first Sunday of November, at 2 a.m.
describe('zones', () => {
  it('know daylight saving time', () => {
    expect(toLocalMs(chicago, Date.UTC(2024, 10, 3, 6, 59))).toBe(Date.UTC(2024, 10, 3, 1, 59));
    expect(toLocalMs(chicago, Date.UTC(2024, 10, 3, 7, 0))).toBe(Date.UTC(2024, 10, 3, 1, 0));
  });
  it('give both instants of the repeated hour and none of the missing one', () => {
    expect(instantsOf(chicago, Date.UTC(2024, 10, 3, 1, 30))).toEqual([
      Date.UTC(2024, 10, 3, 6, 30),
      Date.UTC(2024, 10, 3, 7, 30),
    ]);
    expect(instantsOf(chicago, Date.UTC(2025, 2, 9, 2, 30))).toEqual([]);
    expect(instantsOf(chicago, Date.UTC(2025, 2, 9, 3, 0))).toEqual([Date.UTC(2025, 2, 9, 8)]);
  });
  it('keep standard time all year when told so', () => {
    const standard = zoneOf('America/Chicago', true);
    expect(standard.offsetMs(Date.UTC(2024, 6, 1))).toBe(-6 * 3_600_000);
    expect(standard.offsetMs(Date.UTC(2024, 11, 1))).toBe(-6 * 3_600_000);
    // South of the equator the summer is in January.
    expect(zoneOf('Australia/Sydney', true).offsetMs(Date.UTC(2024, 0, 10))).toBe(10 * 3_600_000);
  });
  it('start local days of 23 and 25 hours', () => {
    const hours = (a: number, b: number) => (b - a) / 3_600_000;
    expect(hours(localDayStart(chicago, 2024, 11, 3), localDayStart(chicago, 2024, 11, 4))).toBe(25);
    expect(hours(localDayStart(chicago, 2025, 3, 9), localDayStart(chicago, 2025, 3, 10))).toBe(23);
    expect(localDayStart(zoneOf('UTC'), 2024, 13, 1)).toBe(Date.UTC(2025, 0, 1));
  });
  it('name the local day of an instant, and where it began', () => {
    // 3 November 2024 begins at 5:00 UTC in Chicago and ends 25 hours later.
    const day = Date.UTC(2024, 10, 3);
    for (const hour of [5, 6, 7, 29]) expect(localDayOf(chicago, day + hour * 3_600_000)).toBe(day);
    expect(localDayOf(chicago, day + 4.9 * 3_600_000)).toBe(day - 86_400_000);
    expect(localDayOf(chicago, day + 30 * 3_600_000)).toBe(day + 86_400_000);
    expect(startOfLocalDay(chicago, day)).toBe(Date.UTC(2024, 10, 3, 5));
  });
  it('refuse an unknown name', () => {
    expect(() => zoneOf('America/Chicagoo')).toThrow(/no IANA time zone/);
  });
});
