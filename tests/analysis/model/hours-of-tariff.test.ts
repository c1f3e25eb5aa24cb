import { describe, expect, it } from 'vitest';
import { hoursOfTariff } from '../../../src/analysis/model/hours-of-tariff.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import type { Tariff } from '../../../src/money/tariff.ts';

const NIGHT: Tariff = {
  id: 'night',
  energy: [
    { pricePerKwh: 0.08, when: { months: null, days: null, hours: [[22 * 60, 6 * 60]] } },
    { pricePerKwh: 0.12, when: null },
  ],
  demand: [{ pricePerKw: 9.5, when: { months: null, days: null, hours: [[7 * 60 + 30, 22 * 60]] }, ratchet: 0.6 }],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};
const chicago = zoneOf('America/Chicago');

describe('clock and prices hour by hour', () => {
  // Daylight time ends 2024-11-03 at 2 h local: the day has 25 hours and 1 o'clock twice.
  const startMs = Date.parse('2024-11-03T05:00:00Z');
  const hours = hoursOfTariff(NIGHT, chicago, startMs, 30);

  it('repeats an hour when the clock goes back, and counts local days', () => {
    expect([...hours.localHour.slice(0, 4)]).toEqual([0, 1, 1, 2]);
    expect([...hours.localDay.slice(23, 27)]).toEqual([0, 0, 1, 1]);
    expect(hours.localMonth[0]).toBe(11);
  });

  it('prices each hour by the rule that holds by the local clock', () => {
    // 0 to 6 h local are seven hours on this day, 22 h local is the 23rd.
    expect([...hours.pricePerKwh.slice(0, 7)]).toEqual(new Array(7).fill(0.08));
    expect(hours.pricePerKwh[7]).toBe(0.12);
    expect(hours.pricePerKwh[22]).toBe(0.12);
    expect(hours.pricePerKwh[23]).toBe(0.08);
  });

  it('a demand rule that begins within an hour holds in that hour', () => {
    const [rule] = hours.demand;
    expect(rule).toMatchObject({ pricePerKw: 9.5, ratchet: 0.6 });
    // 6 h local is the 8th hour, 7 h the 9th.
    expect([...rule.holds.slice(6, 10)]).toEqual([0, 0, 1, 1]);
  });

  it('without a tariff there is no price', () => {
    const none = hoursOfTariff(null, chicago, startMs, 2);
    expect([...none.pricePerKwh]).toEqual([Number.NaN, Number.NaN]);
    expect(none.demand).toEqual([]);
  });
});
