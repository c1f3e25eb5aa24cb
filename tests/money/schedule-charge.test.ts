import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MoistureSchedule } from '../../src/money/moisture-schedule.ts';
import { scheduleCharge } from '../../src/money/schedule-charge.ts';
import { readReference } from '../reference/read-reference.ts';
import { POSTED } from './posted-schedules.ts';

const SEEDED = { seed: 20240923, numRuns: 300 };
const moisture = fc.double({ min: 0, max: 0.6, noNaN: true });
const open: Record<string, MoistureSchedule> = { ...POSTED };
delete open.soybeanOfPrice;

describe('posted schedules', () => {
  // tests/reference/posted_schedule.csv: the whole table of an elevator's posted schedule of corn drying, 2024
  for (const row of readReference('posted_schedule')) {
    it(`corn over ${row.moisture_over_pct} to ${row.moisture_to_pct} %: ${row.published_c_per_bu} c/bu`, () => {
      const [over, to] = [Number(row.moisture_over_pct), Number(row.moisture_to_pct)];
      for (const pct of [over + 0.1, over + 0.5, to]) {
        expect(100 * scheduleCharge(POSTED.cornByPoint, pct / 100)!).toBeCloseTo(Number(row.published_c_per_bu), 9);
      }
    });
  }
  // Worked out by hand from the rules as posted.
  it.each([
    ['on wet bushels, 17.4 %: 2.4 x 3.75 c', POSTED.cornOnWet, 0.174, 0.09],
    ['by tenths, 16.24 % counts 13 tenths x 0.35 c', POSTED.cornByTenths, 0.1624, 0.0455],
    ['by halves, 15.1 % counts one', POSTED.cornByHalves, 0.151, 0.015],
    ['by halves, 15.5 % counts one', POSTED.cornByHalves, 0.155, 0.015],
    ['by halves, 30.7 %: 30 x 1.5 c + 2 x 2 c', POSTED.cornByHalves, 0.307, 0.49],
    ['falling, 17 %: 2 x 4 c', POSTED.cornFalling, 0.17, 0.08],
    ['falling, 24 %: 3 x 4 c + 4 x 3 c + 2 x 2 c', POSTED.cornFalling, 0.24, 0.28],
    ['shrink, 20.5 %: 11 halves x 0.7 %', POSTED.cornShrink, 0.205, 0.077],
    ['of the price, 14.2 %: 3 halves x 1 %', POSTED.soybeanOfPrice, 0.142, 0.03],
    ['of the price, 16.6 %: 4 x 1 % + 4 x 2 %', POSTED.soybeanOfPrice, 0.166, 0.12],
    ['dry grain pays nothing', POSTED.soybeanOfPrice, 0.11, 0],
    ['the base itself pays nothing', POSTED.cornByPoint, 0.15, 0],
  ])('%s', (_, schedule, moistureWb, expected) => {
    expect(scheduleCharge(schedule, moistureWb)).toBeCloseTo(expected, 9);
  });
  it('over the limit the load is not taken; at the limit it is', () => {
    expect(scheduleCharge(POSTED.soybeanOfPrice, 0.17)).toBeCloseTo(0.12, 9);
    expect(scheduleCharge(POSTED.soybeanOfPrice, 0.1701)).toBeNull();
  });
  it('the rate reached holds for all points where the schedule says so: 16 % pays 6 halves x 2 %', () => {
    const reached = { ...POSTED.soybeanOfPrice, banding: 'reached' } as const;
    expect(scheduleCharge(reached, 0.16)).toBeCloseTo(0.12, 9);
    expect(scheduleCharge(reached, 0.15)).toBeCloseTo(0.04, 9);
  });
});

describe('any schedule', () => {
  it('never charges wetter grain less, when cumulative', () => {
    for (const schedule of Object.values(open)) {
      fc.assert(
        fc.property(moisture, moisture, (a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a];
          expect(scheduleCharge(schedule, more)!).toBeGreaterThanOrEqual(scheduleCharge(schedule, less)! - 1e-12);
        }),
        SEEDED,
      );
    }
  });
  it('counts a started step whole: from the exact charge up by less than one step', () => {
    fc.assert(
      fc.property(moisture, fc.constantFrom(1, 0.5, 0.1), (moistureWb, stepPoints) => {
        const exact = scheduleCharge(POSTED.cornOnWet, moistureWb)!;
        const stepped = scheduleCharge({ ...POSTED.cornOnWet, stepPoints }, moistureWb)!;
        expect(stepped).toBeGreaterThanOrEqual(exact - 1e-9);
        expect(stepped).toBeLessThan(exact + 0.0375 * stepPoints);
      }),
      SEEDED,
    );
  });
  it('is not moved by bands that were cut in two', () => {
    fc.assert(
      fc.property(moisture, fc.double({ min: 0.16, max: 0.5, noNaN: true }), (moistureWb, cut) => {
        const bands = [
          { toWb: cut, rate: 0.0375 },
          { toWb: Number.POSITIVE_INFINITY, rate: 0.0375 },
        ];
        const whole = scheduleCharge(POSTED.cornOnWet, moistureWb)!;
        expect(scheduleCharge({ ...POSTED.cornOnWet, bands }, moistureWb)).toBeCloseTo(whole, 9);
      }),
      SEEDED,
    );
  });
});

describe('what cannot be answered', () => {
  const { cornByPoint } = POSTED;
  it.each([Number.NaN, -0.01, 0.61, 18, Number.POSITIVE_INFINITY])('moisture %d', (moistureWb) => {
    expect(() => scheduleCharge(cornByPoint, moistureWb)).toThrow(/moistureWb is .*between 0 and 0\.6/);
  });
  it('a moisture beyond the last band', () => {
    const closed = { ...cornByPoint, bands: [{ toWb: 0.2, rate: 0.05 }] };
    expect(scheduleCharge(closed, 0.2)).toBeCloseTo(0.25, 9);
    expect(() => scheduleCharge(closed, 0.21)).toThrow(/0\.21; the schedule ends at 0\.2/);
  });
  it.each([
    [{ bands: [] }, /at least one rate/],
    [{ bands: [{ toWb: 0.15, rate: 0.05 }] }, /bands\[0\]\.toWb is 0\.15; it must lie above 0\.15/],
    [{ bands: [{ toWb: Number.NaN, rate: 0.05 }] }, /bands\[0\]\.toWb is NaN/],
    [{ bands: [{ toWb: 0.2, rate: Number.NaN }] }, /bands\[0\]\.rate is NaN/],
    [{ bands: [{ toWb: 0.2, rate: -1 }] }, /bands\[0\]\.rate is -1/],
    [{ perPoints: 0 }, /perPoints is 0/],
    [{ stepPoints: 0 }, /stepPoints is 0/],
    [{ baseWb: 15 }, /baseWb is 15/],
    [{ rejectOverWb: 0.1 }, /rejectOverWb is 0\.1/],
  ] as const)('a schedule %o', (wrong, message) => {
    expect(() => scheduleCharge({ ...cornByPoint, ...wrong }, 0.18)).toThrow(message);
  });
});
