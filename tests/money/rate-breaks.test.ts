import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { type Zone, zoneOf } from '../../src/base/zone.ts';
import { rateBreaks } from '../../src/money/rate-breaks.ts';
import type { EnergyRule, Tariff, When } from '../../src/money/tariff.ts';

const MIN = 60_000;
const DAY = 86_400_000;
const tariffOf = (energy: readonly EnergyRule[]): Tariff => ({
  id: 'T',
  energy,
  demand: [],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
});

/** What the clock on the wall says, by luxon, and the first rule that holds then, by the words of the contract. */
function priceBy(rules: readonly EnergyRule[], zone: string, ms: number): number {
  const t = DateTime.fromMillis(ms, { zone });
  const minute = t.hour * 60 + t.minute;
  for (const { pricePerKwh, when } of rules) {
    if (when === null) return pricePerKwh;
    const inHours =
      when.hours === null ||
      when.hours.some(([a, b]) => (a < b ? minute >= a && minute < b : minute >= a || minute < b));
    if ((when.months?.has(t.month) ?? true) && (when.days?.has(t.weekday) ?? true) && inHours) return pricePerKwh;
  }
  return Number.NaN;
}

/** The plain walk: every five minutes asked. */
function plainWalk(rules: readonly EnergyRule[], zone: string, fromMs: number, toMs: number) {
  const pieces: [number, number][] = [];
  for (let ms = fromMs; ms < toMs; ms += 5 * MIN) {
    const price = priceBy(rules, zone, ms);
    if (pieces.length === 0 || !Object.is(pieces[pieces.length - 1][1], price)) pieces.push([ms, price]);
  }
  return pieces;
}

const subset = (from: number, to: number) =>
  fc.option(
    fc.uniqueArray(fc.integer({ min: from, max: to }), { minLength: 1, maxLength: 4 }).map((list) => new Set(list)),
    { nil: null },
  );
const fiveMinutes = fc.integer({ min: 0, max: 287 }).map((n) => n * 5);
const hours = fc
  .tuple(fiveMinutes, fiveMinutes, fc.boolean())
  .filter(([a, b]) => a !== b)
  // A window up to midnight is written 24:00.
  .map(([a, b, toMidnight]) => [a, toMidnight ? 1440 : b] as const);
const rule: fc.Arbitrary<EnergyRule> = fc.record({
  pricePerKwh: fc.constantFrom(0.05, 0.08, 0.12, 0.2),
  when: fc.record({
    months: subset(1, 12),
    days: subset(1, 7),
    hours: fc.option(fc.array(hours, { minLength: 1, maxLength: 2 }), { nil: null }),
  }) as fc.Arbitrary<When>,
});

describe('the price through time', () => {
  // A day on which each zone sets its clock, forth and back; Lord Howe sets it by half an hour, Santiago at midnight.
  const changes: [string, string, string][] = [
    ['America/Chicago', '2024-11-03', '2025-03-09'],
    ['Europe/Berlin', '2024-10-27', '2025-03-30'],
    ['Australia/Sydney', '2025-04-06', '2024-10-06'],
    ['Australia/Lord_Howe', '2025-04-06', '2024-10-06'],
    ['Australia/Adelaide', '2025-04-06', '2024-10-06'],
    ['America/Santiago', '2025-04-06', '2024-09-08'],
    ['Asia/Kathmandu', '2025-01-01', '2025-07-01'],
  ];
  it.each(changes)('is that of a plain walk in %s, around %s and %s', (zone, back, forth) => {
    const kit = zoneOf(zone);
    fc.assert(
      fc.property(
        fc.array(rule, { minLength: 1, maxLength: 3 }),
        fc.boolean(),
        fc.constantFrom(back, forth),
        fc.integer({ min: -9 * 288, max: 288 }),
        fc.integer({ min: 1, max: 20 * 288 }),
        (rules, last, day, before, length) => {
          const all = last ? [...rules, { pricePerKwh: 0.1, when: null }] : rules;
          const from = Date.parse(`${day}T00:00Z`) + before * 5 * MIN;
          const to = from + length * 5 * MIN;
          const got = rateBreaks(tariffOf(all), kit, from, to);
          const pieces = Array.from(got.startMs, (ms, i) => [ms, got.pricePerKwh[i]]);
          expect(pieces).toEqual(plainWalk(all, zone, from, to));
        },
      ),
      { numRuns: 25, seed: 7 },
    );
  });

  it('asks the zone once or twice a week, and by the quarter hour only in weeks in which the clock is set', () => {
    // A stray stamp of 1970. A year: 53 weeks asked at both ends (106), and two weeks in which the clock is set, asked at
    // their 672 quarter hours and at the 168 hours among them: 106 + 2 x 840 = 1,786.
    let asked = 0;
    const inner = zoneOf('America/Chicago');
    const zone: Zone = {
      name: inner.name,
      offsetMs(ms) {
        asked += 1;
        return inner.offsetMs(ms);
      },
    };
    const night = tariffOf([
      { pricePerKwh: 0.08, when: { months: null, days: null, hours: [[1320, 360]] } },
      { pricePerKwh: 0.12, when: null },
    ]);
    const got = rateBreaks(night, zone, 0, Date.UTC(2025, 0, 1));
    // Two breaks a day over 20,089 days and the piece in which 1970 begins: local time is 18:00 on the last of 1969.
    expect(got.startMs.length).toBe(2 * 20_089 + 1);
    expect(asked).toBeLessThan(55 * 1_800);
    expect(DAY * 20_089).toBe(Date.UTC(2025, 0, 1));
  });
});
