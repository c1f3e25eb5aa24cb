import { describe, expect, it } from 'vitest';
import { zoneOf } from '../../src/base/zone.ts';
import { connectedYears } from '../../src/money/connected-charge.ts';
import { monthlyDemand, quarterMeans } from '../../src/money/demand.ts';
import { energyCost } from '../../src/money/energy-cost.ts';
import { localMonths } from '../../src/money/local-time.ts';
import { minimumTopUp } from '../../src/money/minimum-top-up.ts';
import { periodDemand } from '../../src/money/period-demand.ts';
import { rateAt, rateBreaks } from '../../src/money/rate-breaks.ts';
import type { Tariff, When } from '../../src/money/tariff.ts';

const chicago = zoneOf('America/Chicago');
const H = 3_600_000;
const utc = (text: string) => Date.parse(`${text}Z`);
const when = (part: Partial<When>): When => ({ months: null, days: null, hours: null, ...part });
const spans = (...list: readonly (readonly [number, number, number])[]) => ({
  startMs: Float64Array.from(list, ([from]) => from),
  endMs: Float64Array.from(list, ([, to]) => to),
  powerW: Float64Array.from(list, ([, , watt]) => watt),
});
// 22:00-06:00 at 0.08, else 0.12
const night: Tariff = {
  id: 'night',
  energy: [
    { pricePerKwh: 0.08, when: when({ hours: [[22 * 60, 6 * 60]] }) },
    { pricePerKwh: 0.12, when: null },
  ],
  demand: [],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};
const cost = (tariff: Tariff, from: number, to: number, watt: number) =>
  energyCost(spans([from, to, watt]), rateBreaks(tariff, chicago, from, to));

describe('energy by time of use, by hand', () => {
  it('across midnight: 10 kW from 20:00 to 08:00 local is 2 + 2 h at 0.12 and 8 h at 0.08 = 4.80 + 6.40', () => {
    // 10 October 2024, CDT (UTC-5): 20:00 local is 01:00 UTC
    const got = cost(night, utc('2024-10-11T01:00:00'), utc('2024-10-11T13:00:00'), 10_000);
    expect(got.kwh).toBeCloseTo(120, 9);
    expect(got.cost).toBeCloseTo(11.2, 9);
  });
  it('autumn day of 25 h: 0-6 local lasts 7 h', () => {
    // 3 November 2024: 00:00 CDT = 05:00 UTC, the day ends at 06:00 UTC of the 4th. 0-6 local lasts 7 h, 22-24 lasts 2 h:
    // 9 h x 0.08 = 0.72; 6-22 is 16 h x 0.12 = 1.92; together 2.64
    const got = cost(night, utc('2024-11-03T05:00:00'), utc('2024-11-04T06:00:00'), 1000);
    expect(got.kwh).toBeCloseTo(25, 9);
    expect(got.cost).toBeCloseTo(2.64, 9);
  });
  it('spring day of 23 h: 0-6 local lasts 5 h: 7 h x 0.08 + 16 h x 0.12 = 0.56 + 1.92', () => {
    // 9 March 2025: 00:00 CST = 06:00 UTC, the day ends at 05:00 UTC of the 10th
    const got = cost(night, utc('2025-03-09T06:00:00'), utc('2025-03-10T05:00:00'), 1000);
    expect(got.kwh).toBeCloseTo(23, 9);
    expect(got.cost).toBeCloseTo(2.48, 9);
  });
  it('breaks exactly at local hours, also at half past and in the middle of a span', () => {
    const half: Tariff = {
      ...night,
      energy: [
        { pricePerKwh: 1, when: when({ days: new Set([1, 2, 3, 4, 5]), hours: [[13 * 60 + 30, 19 * 60]] }) },
        { pricePerKwh: 0.5, when: null },
      ],
    };
    // Friday 11 October 2024 13:30 CDT = 18:30 UTC to 19:00 CDT = 00:00 UTC; Saturday none
    const rates = rateBreaks(half, chicago, utc('2024-10-11T05:00:00'), utc('2024-10-13T05:00:00'));
    expect([...rates.startMs]).toEqual([
      utc('2024-10-11T05:00:00'),
      utc('2024-10-11T18:30:00'),
      utc('2024-10-12T00:00:00'),
    ]);
    expect([...rates.pricePerKwh]).toEqual([0.5, 1, 0.5]);
  });
  it('a window across midnight takes the weekday of the moment itself', () => {
    const friday: Tariff = {
      ...night,
      energy: [
        { pricePerKwh: 1, when: when({ days: new Set([5]), hours: [[22 * 60, 6 * 60]] }) },
        { pricePerKwh: 0, when: null },
      ],
    };
    const at = (text: string) => rateAt(friday, chicago, utc(text));
    expect(at('2024-10-11T07:00:00')).toBe(1); // Friday 02:00
    expect(at('2024-10-12T03:30:00')).toBe(1); // Friday 22:30
    expect(at('2024-10-12T07:00:00')).toBe(0); // Saturday 02:00
  });
  it('says NaN where no rule has a price for used energy', () => {
    const gap: Tariff = { ...night, energy: [{ pricePerKwh: 1, when: when({ months: new Set([7]) }) }] };
    expect(cost(gap, utc('2024-10-11T07:00:00'), utc('2024-10-11T08:00:00'), 1000).cost).toBeNaN();
    expect(cost(gap, utc('2024-10-11T07:00:00'), utc('2024-10-11T08:00:00'), 0).cost).toBe(0);
  });
  it('a zone with half-hour offset has its boundaries on UTC half hours', () => {
    const kolkata = zoneOf('Asia/Kolkata'); // UTC+5:30: 22:00 local is 16:30 UTC
    const rates = rateBreaks(night, kolkata, utc('2024-10-11T12:00:00'), utc('2024-10-12T12:00:00'));
    expect([...rates.startMs].slice(1)).toEqual([utc('2024-10-11T16:30:00'), utc('2024-10-12T00:30:00')]);
  });
});

describe('demand, by hand', () => {
  const from = utc('2024-10-01T05:00:00');
  const to = utc('2025-01-01T06:00:00');
  it('one 15-minute start of a 15 kW fan at 10 a kW costs 150 (worked by hand: 15 kW x 10 a kW)', () => {
    const at = utc('2024-10-11T18:00:00');
    const [october] = monthlyDemand(
      { pricePerKw: 10, when: null, ratchet: null },
      chicago,
      [spans([at, at + H / 4, 15_000])],
      from,
      to,
    );
    expect(october).toMatchObject({ peakKw: 15, atMs: at, billedKw: 15, cost: 150 });
  });
  it('staggered starts: two 10 kW fans for 15 minutes, 10 minutes apart, peak at 10 + 10 x 5/15 = 13.333 kW', () => {
    // first 12:00-12:15, second 12:10-12:25: quarter 12:00 has 10 + 3.333, quarter 12:15 has 6.667
    const at = utc('2024-10-11T17:00:00');
    const fans = [spans([at, at + H / 4, 10_000]), spans([at + H / 6, at + H / 6 + H / 4, 10_000])];
    const [october] = monthlyDemand({ pricePerKw: 9, when: null, ratchet: null }, chicago, fans, from, to);
    expect(october.peakKw).toBeCloseTo(40 / 3, 9);
    expect(october.cost).toBeCloseTo(120, 9);
    expect(october.shares[0]).toBeCloseTo(0.75, 9);
    expect(october.shares[1]).toBeCloseTo(0.25, 9);
  });
  it('ratchet 60 %: peaks 40, 10, 30 kW bill 40, 24, 30; the second month is shared as the first month’s peak', () => {
    const oct = utc('2024-10-11T17:00:00');
    const nov = utc('2024-11-11T17:00:00');
    const dec = utc('2024-12-11T17:00:00');
    const fans = [
      spans([oct, oct + H, 30_000], [nov, nov + H, 10_000]),
      spans([oct, oct + H, 10_000], [dec, dec + H, 30_000]),
    ];
    const months = monthlyDemand({ pricePerKw: 1, when: null, ratchet: 0.6 }, chicago, fans, from, to);
    expect(months.map((m) => [m.month, m.peakKw, m.billedKw])).toEqual([
      ['2024-10', 40, 40],
      ['2024-11', 10, 24],
      ['2024-12', 30, 30],
    ]);
    expect(months[1].shares).toEqual([0.75, 0.25]);
    expect(months[2].shares).toEqual([0, 1]);
  });
  it('of equal peaks the first, also where rounding makes a later one higher by a trillionth', () => {
    const at = utc('2024-10-11T17:00:00');
    const fan = spans([at, at + H, 10_000], [at + H, at + 2 * H, 10_000 * (1 + 1e-12)]);
    const rule = { pricePerKw: 10, when: null, ratchet: null };
    expect(monthlyDemand(rule, chicago, [fan], from, to)[0].atMs).toBe(at);
    // Its bill's fans are those of that quarter hour: another fan's 10 kW of later are the same peak, not a new one.
    const later = spans([at + 3 * H, at + 4 * H, 10_000 * (1 + 1e-12)]);
    const means = [fan, later].map(quarterMeans);
    expect(periodDemand(rule, chicago, means, from, to).shares[0]).toBeCloseTo(1, 9);
  });
  it('a peak outside the rule’s hours counts nothing', () => {
    const rule = { pricePerKw: 10, when: when({ hours: [[7 * 60, 22 * 60]] }), ratchet: null };
    // 11 October 22:00 CDT = 03:00 UTC of the 12th: first quarter outside; 21:45 is the last inside
    const at = utc('2024-10-12T02:50:00'); // 21:50 to 22:50, 12 kW: inside only 10 of 15 minutes = 8 kW
    const [october] = monthlyDemand(rule, chicago, [spans([at, at + H, 12_000])], from, to);
    expect(october.peakKw).toBeCloseTo(8, 9);
    expect(october.atMs).toBe(utc('2024-10-12T02:45:00'));
  });
  it('a month with nothing running bills the ratchet all the same, a month out of the rule’s season does not', () => {
    const oct = utc('2024-10-11T17:00:00');
    const fan = spans([oct, oct + H, 20_000]);
    const all = monthlyDemand({ pricePerKw: 2, when: null, ratchet: 0.5 }, chicago, [fan], from, to);
    expect(all.map((m) => m.cost)).toEqual([40, 20, 20]);
    const season = monthlyDemand(
      { pricePerKw: 2, when: when({ months: new Set([10, 11]) }), ratchet: 0.5 },
      chicago,
      [fan],
      from,
      to,
    );
    expect(season.map((m) => m.cost)).toEqual([40, 20, 0]);
  });
});

describe('a ratchet over the year’s end, by hand', () => {
  it('a peak of 40 kW in October 2024 at 50 % bills 20 kW in the eleven months to September 2025, nothing in October 2025', () => {
    const at = utc('2024-10-11T17:00:00');
    const december = utc('2024-12-11T18:00:00');
    const fan = spans([at, at + H, 40_000], [december, december + H, 30_000]);
    const months = monthlyDemand(
      { pricePerKw: 2, when: null, ratchet: 0.5 },
      chicago,
      [fan],
      utc('2024-10-01T05:00:00'),
      utc('2026-01-01T06:00:00'),
    );
    // December's own 30 kW exceed 20; from October 2025 on December's peak is the highest of eleven months: 15 kW, and in
    // December 2025 that too is twelve months old.
    expect(months.map((m) => [m.month, m.billedKw])).toEqual([
      ['2024-10', 40],
      ['2024-11', 20],
      ['2024-12', 30],
      ...['01', '02', '03', '04', '05', '06', '07', '08', '09'].map((m) => [`2025-${m}`, 20]),
      ['2025-10', 15],
      ['2025-11', 15],
      ['2025-12', 0],
    ]);
  });
});

describe('months, connected load, minimum', () => {
  it('cuts local months exactly', () => {
    const months = localMonths(chicago, utc('2024-10-15T00:00:00'), utc('2024-12-01T06:00:00'));
    expect(months).toEqual([
      { month: '2024-10', fromMs: utc('2024-10-01T05:00:00'), toMs: utc('2024-11-01T05:00:00') },
      { month: '2024-11', fromMs: utc('2024-11-01T05:00:00'), toMs: utc('2024-12-01T06:00:00') },
    ]);
  });
  it('one season owes one year; a day over twelve months a second', () => {
    expect(connectedYears(chicago, utc('2024-09-20T05:00:00'), utc('2025-05-01T05:00:00'))).toBe(1);
    expect(connectedYears(chicago, utc('2024-09-20T05:00:00'), utc('2025-09-20T05:00:00'))).toBe(1);
    expect(connectedYears(chicago, utc('2024-09-20T05:00:00'), utc('2025-09-21T05:00:00'))).toBe(2);
  });
  it('a minimum of 45 adds 7 to charges of 38 and nothing to 60', () => {
    expect(minimumTopUp(45, 38)).toBe(7);
    expect(minimumTopUp(45, 60)).toBe(0);
    expect(minimumTopUp(null, 0)).toBe(0);
  });
});
