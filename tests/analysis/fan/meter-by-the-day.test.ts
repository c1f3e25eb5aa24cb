import { describe, expect, it } from 'vitest';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { fanHoursBetween } from '../../../src/analysis/fan/spans.ts';
import { Z90 } from '../../../src/base/estimate.ts';
import { FAN, fanTable, H, knownFan, sampleTimes } from './known-fan.ts';

const KWH = 3.6e6;
const DAY = 24 * H;
const start = Date.UTC(2024, 9, 10, 5);
/** A meter read every midnight that then has advanced by these kWh. */
const daily = (kwh: readonly number[]) => {
  const read = [0];
  for (const day of kwh) read.push(read[read.length - 1] + day);
  return fanTable(read.map((dial, i) => ({ time: start + i * DAY, energy: dial * KWH })));
};

describe('an energy meter read once a day, the only log of the fan', () => {
  it('by hand: five days at 12 kW tell the power, half a day at it is 12 h', () => {
    // 12 kW x 24 h = 288 kWh, the middle of five days; 144.3 kWh are 12.025 h and 72.1 are 6.008: 120 + 18.03 h
    const got = fanSeason(FAN, daily([0, 288.4, 287.6, 288, 288.3, 287.7, 144.3, 0, 0, 72.1, 0]));
    expect(got.onHours).toBeCloseTo(138.03, 2);
    expect(got.energyKwh).toBeCloseTo(1656.4, 6);
    expect(got.how).toContain('12 kW, found from the meter');
    expect(got.notes).toEqual([]);
  });
  it('by hand: without a full day the hours hang on the nameplate, 15 hp x 0.7457 / 0.88 = 12.71 kW, and it says so', () => {
    // Days of 100, 80, 50 and 20 kWh: 250 kWh over 12.71 kW are 19.67 h, give or take 12 % and the clock's 0.1 %.
    const got = fanSeason(FAN, daily([100, 0, 80, 50, 0, 0, 20]));
    expect(got.energyKwh).toBeCloseTo(250, 6);
    expect(got.onHours).toBeCloseTo(19.67, 2);
    expect((got.onHoursSd ?? 0) / got.onHours).toBeCloseTo(0.12, 3);
    expect(got.notes?.[0]).toContain('may be a fifth off');
  });
  it('a fan cannot have run more than 24 h a day: three days at 15 kW or more make it no less', () => {
    // 366, 362 and 360 kWh: the third highest is 15 kW. 120 kWh at it are 8 h.
    const got = fanSeason(FAN, daily([120, 0, 366, 0, 120, 0, 362, 120, 0, 360, 0]));
    expect(got.onHours).toBeCloseTo(3 * 24 + 3 * 8, 6);
  });
  it.each([1, 2, 3])('weeks of running: hours within 0.5 % of a known season (seed %i)', (seed) => {
    const known = knownFan(seed, 200, 90, 20);
    const rows = sampleTimes(known, 1440).map((ms) => ({
      time: ms,
      energy: Math.floor(known.energyTo(ms) / KWH) * KWH,
    }));
    const got = fanSeason(FAN, fanTable(rows));
    expect(Math.abs(got.onHours / known.hours - 1)).toBeLessThan(0.005);
  });
  // Motors of 15 hp drawing 10.5, 12.6 and 15 kW, in runs of some hours: nothing but the nameplate tells the hours.
  it.each([10_500, 12_600, 15_000])(
    'runs of some hours at %i W: energy exact, the true hours within the interval',
    (watt) => {
      const known = knownFan(4, 200, 9, 14, watt);
      const rows = sampleTimes(known, 1440).map((ms) => ({
        time: ms,
        energy: Math.floor(known.energyTo(ms) / KWH) * KWH,
      }));
      const got = fanSeason(FAN, fanTable(rows));
      expect(Math.abs(got.energyKwh / (known.energyTo(known.toMs) / KWH) - 1)).toBeLessThan(0.001);
      expect(Math.abs(got.onHours - known.hours)).toBeLessThan(Z90 * (got.onHoursSd ?? 0));
    },
  );
});

describe('a meter read once a day that was reset or replaced', () => {
  /** Twelve hours of each of twenty days; after ten the dial falls to what is given, and counts on. */
  const dials = (after: number) =>
    Array.from({ length: 21 }, (_, day) => (day < 10 ? 4500 + 12 * day : after + 12 * (day - 10)));
  const of = (after: number) =>
    fanSeason(FAN, fanTable(dials(after).map((dial, day) => ({ time: start + day * DAY, run: dial * 3600 }))));

  it.each([
    // By hand: nineteen days of 12 h; of the tenth what the new dial can have counted since, and the rest of its 24 h is open.
    ['to zero', 0, 228, 24],
    ['to 9 h, which may be counted since', 9, 237, 15],
    ['to 812 h, which is another meter’s', 812, 228, 24],
  ])('%s: the day’s other hours are not known, and it is told', (_, after, hours, unknown) => {
    const got = of(after);
    expect(got.onHours).toBeCloseTo(hours, 6);
    expect(got.unknownHours).toBeCloseTo(unknown, 6);
    expect(got.notes?.join(' ')).toContain(`it fell from 4608 h to ${after} h`);
    // Hours counted since the dial began anew have no moment, as those of the other days.
    const day = { fromMs: start + 9 * DAY, toMs: start + 10 * DAY };
    if (after === 9) expect(got.spread).toContainEqual(day);
    else expect(got.spread).not.toContainEqual(day);
    // So that the true 240 h lie between what is known and what may be.
    expect(got.onHours).toBeLessThanOrEqual(240);
    expect(got.onHours + got.unknownHours).toBeGreaterThanOrEqual(240);
  });
});

describe('a run-time meter read once a day, the only log of the fan', () => {
  it('by hand: counts its hours itself, so that they are as sure as its clock, whatever the motor draws', () => {
    // 6.5 + 10.25 + 8 h: 24.75 h; of its error the clock's 0.1 % is all that is left, 0.02475 h.
    const dial = [1200.3, 1206.8, 1206.8, 1217.05, 1225.05, 1225.05];
    const got = fanSeason(FAN, fanTable(dial.map((hours, i) => ({ time: start + i * DAY, run: hours * 3600 }))));
    expect(got.onHours).toBeCloseTo(24.75, 6);
    expect(got.onHoursSd).toBeCloseTo(0.024_75, 5);
  });
});

describe('a clock that runs the fan for the same time every day, on a meter read once a day', () => {
  const days = Array.from({ length: 11 }, (_, i) => i);
  it.each([
    ['run-time', days.map((i) => ({ time: start + i * DAY, run: (1200.3 + 8 * i) * 3600 }))],
    ['energy', days.map((i) => ({ time: start + i * DAY, energy: (310 + 8 * 12.71 * i) * KWH }))],
  ])('%s meter: alike days are no step of the meter; eight hours of each, nobody knows which', (_, rows) => {
    const got = fanSeason(FAN, fanTable(rows));
    expect(got.onHours / 80).toBeCloseTo(1, 3);
    expect(got.spread).toEqual(days.slice(1).map((i) => ({ fromMs: start + (i - 1) * DAY, toMs: start + i * DAY })));
    // Spread evenly: two hours in each quarter of a day.
    for (let ms = start; ms < start + 10 * DAY; ms += DAY / 4) {
      expect(fanHoursBetween(got.spans, ms, ms + DAY / 4)).toBeCloseTo(2, 2);
    }
  });
});

describe('a log of current at a quarter hour, runs of about an hour', () => {
  it('is off by chance and not to one side, and by as much as the interval says', () => {
    const off: number[] = [];
    let inside = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const known = knownFan(seed, 100, 1, 3);
      const rows = sampleTimes(known, 15).map((time) => ({ time, current: known.onAt(time) ? 40 : 0.05 }));
      const got = fanSeason(FAN, fanTable(rows));
      const sd = got.onHoursSd ?? 0;
      off.push((got.onHours - known.hours) / sd);
      if (Math.abs(got.onHours - known.hours) <= Z90 * sd) inside += 1;
    }
    const mean = off.reduce((sum, one) => sum + one, 0) / off.length;
    // The mean of 20 values of standard error 1 is within 2.6 / sqrt(20) = 0.58 in 99 of 100 cases.
    expect(Math.abs(mean)).toBeLessThan(0.58);
    // 18 of 20 are expected; 15 or fewer would have a chance of 4 %.
    expect(inside).toBeGreaterThanOrEqual(16);
  });
});
