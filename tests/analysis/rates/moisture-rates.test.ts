import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../scripts/sample/random.ts';
import { moistureRates } from '../../../src/analysis/rates/moisture-rates.ts';
import type { BinFan, BinMoisture } from '../../../src/analysis/types.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';
import { ratioInterval } from '../../../src/base/stats/ratio-interval.ts';

const DAY = 86_400_000;
/** Midnight of 1 October 2024 in Chicago. */
const START = Date.UTC(2024, 9, 1, 5);
const ZONE = 'America/Chicago';

interface Made {
  /** points removed by so many fan hours */
  points: (fanHours: number) => number;
  hoursADay?: number;
  days?: number;
  noise?: number;
  seed?: number;
  still?: (day: number) => boolean;
  /** share of the true change that cables miss or add */
  scale?: number;
  errorParts?: BinMoisture['errorParts'];
  /** the log is silent on this day */
  silent?: (day: number) => boolean;
}

/** A bin whose moisture is known day by day: fan hours the same each day, still air at noon, 10 kW. */
function made({
  points,
  hoursADay = 12,
  days = 61,
  noise = 0,
  seed = 1,
  still = () => true,
  scale = 1,
  errorParts,
  silent = () => false,
}: Made) {
  const random = randomStream(seed, 'rates');
  const start = 0.18;
  const silentDays = (before: number) => Array.from({ length: before }, (_, day) => day).filter(silent).length;
  const daily = Array.from({ length: days }, (_, day) => {
    const removed = scale * points((day + 0.5) * hoursADay) + noise * random.normal();
    return {
      dayMs: START + day * DAY,
      mean: start - removed / 100,
      low: null,
      high: null,
      stillAir: still(day),
      fanHours: (day + 1 - silentDays(day + 1)) * hoursADay,
    };
  });
  const ran = days * hoursADay;
  const unknownHours = silentDays(days) * hoursADay;
  const hours = ran - unknownHours;
  const removed = points(ran);
  const half = 0.15;
  const pointsRemoved = estimate(removed, removed - half, removed + half);
  const hoursOf = (month: string, quiet: boolean) =>
    daily.filter((day, i) => new Date(day.dayMs).toISOString().startsWith(month) && silent(i) === quiet).length *
    hoursADay;
  const hundred = {
    value: 100 * removed,
    interval: [100 * (removed - half), 100 * (removed + half)] as [number, number],
    why: null,
  };
  const moisture = {
    start: { value: start, from: 'sensors' },
    daily,
    pointsRemoved,
    perHundredFanHours: ratioInterval(hundred, estimate(hours, hours, hours + unknownHours), ''),
    errorParts: errorParts ?? [
      { cause: 'noise of the readings', sd: 0.01 },
      { cause: 'drift of the sensors', sd: 0.02 },
      { cause: 'spread between cables', sd: 0.05 * Math.max(1, Math.abs(removed)) },
    ],
    degreesOfFreedom: null,
    why: null,
  } as unknown as BinMoisture;
  const months = ['2024-10', '2024-11'].map((month) => ({
    month,
    hours: hoursOf(month, false),
    unknownHours: hoursOf(month, true),
    energyKwh: 10 * hoursOf(month, false),
  }));
  const fan = {
    hours: estimate(hours, hours, hours + unknownHours),
    unknownHours,
    energyKwh: estimate(10 * hours, 9.5 * hours, 10.5 * (hours + unknownHours)),
    // Half a kilowatt of ten at 90 %.
    fans: [{ energyKwh: 10 * hours, energyRelSd: 0.05 / 1.645, energyFrom: 'current', onHours: hours }],
    months,
  } as unknown as BinFan;
  return { fan, moisture };
}
const ratesOf = (of: Made) => {
  const { fan, moisture } = made(of);
  return moistureRates(fan, moisture, ZONE);
};

describe('points by fan hours', () => {
  it('by hand: 0.4 point per 100 h is 250 h and 2,500 kWh a point', () => {
    // 61 days of 12 h: 732 h, 2.928 points; (2.928 +- 0.15) / 7.32 h = 0.4 (0.380 to 0.420).
    const { season, line, months } = ratesOf({ points: (h) => 0.004 * h });
    expect(season?.perHundredFanHours.value).toBeCloseTo(0.4, 9);
    expect(season!.perHundredFanHours.interval![0]).toBeCloseTo(0.4 - 0.15 / 7.32, 6);
    expect(season?.hoursPerPoint.value).toBeCloseTo(250, 6);
    expect(season!.hoursPerPoint.interval![1]).toBeCloseTo(100 / (0.4 - 0.15 / 7.32), 3);
    expect(season?.kwhPerPoint.value).toBeCloseTo(2500, 6);
    expect(line?.perHundredFanHours.value).toBeCloseTo(0.4, 9);
    expect(months.map((one) => one.key)).toEqual(['2024-10', '2024-11']);
    for (const one of months) {
      expect(one.perHundredFanHours.value).toBeCloseTo(0.4, 9);
      expect(one.kwhPerPoint.value).toBeCloseTo(2500, 3);
    }
    expect(months.map((one) => one.fanHours)).toEqual([31 * 12, 30 * 12]);
  });

  it('fans that ran through a silence of their log are in the intervals: hours, kWh and points', () => {
    // 0.4 point per 100 h all along; each fifth day of October is silent, and the fans ran through it.
    const { season, line, months, notes } = ratesOf({
      points: (h) => 0.004 * h,
      noise: 0.02,
      silent: (day) => day < 31 && day % 5 === 4,
    });
    const holds = ({ interval }: Estimate, truth: number) => {
      expect(interval![0]).toBeLessThanOrEqual(truth + 1e-9);
      expect(interval![1]).toBeGreaterThanOrEqual(truth - 1e-9);
    };
    for (const of of [season!, line!, months[0], months[1]]) {
      holds(of.perHundredFanHours, 0.4);
      holds(of.hoursPerPoint, 250);
      holds(of.kwhPerPoint, 2500);
    }
    expect(months[0].fanHours).toBe(25 * 12);
    expect(notes.join(' ')).toContain('silent for 72 h');
  });

  it('a change that bends within a month: the interval reaches to the month’s whole change over its hours', () => {
    // Half of the change in the first tenth of October's hours: 1 point in 36 h, then 1 point in 336 h: 2 in 372 h, 0.54 in 100.
    const bent = (h: number) => (h < 36 ? h / 36 : 1 + (h - 36) / 336);
    const { months } = ratesOf({ points: bent, days: 31, noise: 0.02 });
    const { value, interval } = months[0].perHundredFanHours;
    // The line is the long tail's: 1 / 3.36.
    expect(value).toBeCloseTo(0.3, 1);
    const days = (n: number) => bent((n + 0.5) * 12);
    expect(interval![1]).toBeGreaterThanOrEqual((100 * (days(30) - days(0))) / 360 - 0.02);
    expect(months[0].hoursPerPoint.interval![0]).toBeLessThanOrEqual(360 / (days(30) - days(0)) + 10);
  });

  it('each month has its own rate: fast first, slow later', () => {
    const turn = 31 * 12;
    const { months } = ratesOf({
      points: (h) => (h < turn ? 0.006 * h : 0.006 * turn + 0.001 * (h - turn)),
      noise: 0.02,
    });
    expect(months[0].perHundredFanHours.value).toBeCloseTo(0.6, 1);
    expect(months[1].perHundredFanHours.value).toBeCloseTo(0.1, 1);
    expect(months[0].perHundredFanHours.interval![0]).toBeGreaterThan(months[1].perHundredFanHours.interval![1]);
  });

  it('is withheld a point where the rate may be zero, and the rate itself with too few days', () => {
    const flat = ratesOf({ points: (h) => 0.0001 * h, noise: 0.1 });
    expect(flat.line!.perHundredFanHours.interval![0]).toBeLessThan(0);
    expect(flat.line?.hoursPerPoint).toMatchObject({ value: null, why: expect.stringMatching(/may be zero/) });
    expect(flat.line?.kwhPerPoint.value).toBeNull();
    const short = ratesOf({ points: (h) => 0.004 * h, days: 4 });
    expect(short.line?.perHundredFanHours.why).toMatch(/[Ff]ewer than five days/);
    expect(ratesOf({ points: (h) => 0.004 * h, days: 20, hoursADay: 1 }).line?.perHundredFanHours.why).toMatch(
      /less than 24 h/,
    );
  });

  it('is withheld a point where the rate is told from zero by a hair: an interval of over ten to one says nothing', () => {
    // 0.16 +- 0.15 point in 732 h is 732 / 0.31 to 732 / 0.01, 31 to 1; 0.21 +- 0.15 point is 732 / 0.36 to 732 / 0.06, 6 to 1.
    const hair = ratesOf({ points: (h) => (0.16 * h) / 732 }).season!;
    expect(hair.perHundredFanHours.interval![0]).toBeGreaterThan(0);
    expect(hair.hoursPerPoint).toMatchObject({ value: null, why: expect.stringMatching(/hardly be told from zero/) });
    expect(hair.kwhPerPoint).toMatchObject({ value: null, why: expect.stringMatching(/hardly be told from zero/) });
    const sure = ratesOf({ points: (h) => (0.21 * h) / 732 }).season!;
    expect(sure.hoursPerPoint.value).toBeCloseTo(732 / 0.21, 6);
  });

  it('conditioning: points put in, hours a point without a sign', () => {
    const { line } = ratesOf({ points: (h) => -0.005 * h, noise: 0.02 });
    expect(line?.perHundredFanHours.value).toBeCloseTo(-0.5, 1);
    expect(line?.hoursPerPoint.value).toBeGreaterThan(180);
    expect(line!.hoursPerPoint.interval![0]).toBeGreaterThan(0);
  });

  it('some days that are anything do not turn the rate', () => {
    const { fan, moisture } = made({ points: (h) => 0.004 * h, noise: 0.02 });
    const daily = moisture.daily.map((day, i) => (i % 6 === 3 ? { ...day, mean: 0.22 } : day));
    const { line } = moistureRates(fan, { ...moisture, daily }, ZONE);
    expect(Math.abs(line!.perHundredFanHours.value! - 0.4)).toBeLessThan(0.03);
  });

  it('moving air widens the interval, and a note says so', () => {
    const still = ratesOf({ points: (h) => 0.004 * h, noise: 0.05 });
    const moving = ratesOf({ points: (h) => 0.004 * h, noise: 0.05, still: () => false });
    const width = (of: typeof still) =>
      of.line!.perHundredFanHours.interval![1] - of.line!.perHundredFanHours.interval![0];
    expect(width(moving)).toBeGreaterThan(2 * width(still));
    expect(moving.notes.join()).toMatch(/moving air/);
    expect(moving.line?.stillDays).toBe(0);
  });

  // Cables that see 5 % more or less than the whole bin, day after day, and a day's noise: the interval must hold the truth.
  it('holds the truth in nine of ten seasons', () => {
    const random = randomStream(7, 'scales');
    let inside = 0;
    const draws = 200;
    for (let seed = 0; seed < draws; seed++) {
      const scale = 1 + 0.05 * random.normal();
      const { line } = ratesOf({ points: (h) => 0.004 * h, noise: 0.05, seed, scale });
      const [low, high] = line!.perHundredFanHours.interval!;
      if (low <= 0.4 && high >= 0.4) inside += 1;
    }
    // 200 draws leave 2 % of standard error.
    expect(inside / draws).toBeGreaterThan(0.84);
    expect(inside / draws).toBeLessThan(0.97);
  });

  it('the band of a day: noise, drift so far, and the share of the change that is not seen', () => {
    const { days } = ratesOf({ points: (h) => 0.004 * h });
    const last = days[days.length - 1];
    // Last day: 726 fan hours, 2.904 points; 1.645 * hypot(0.01, 0.02, 0.05 * 2.904).
    expect(last.points).toBeCloseTo(2.904, 6);
    expect(last.high - last.points).toBeCloseTo(1.645 * Math.hypot(0.01, 0.02, 0.05 * 2.904), 3);
    expect(days[0].high - days[0].points).toBeCloseTo(1.645 * Math.hypot(0.01, 0.05 * 0.024), 3);
  });

  it('without any day of moistures says why', () => {
    const { fan, moisture } = made({ points: () => 0 });
    const none = moistureRates(
      fan,
      { ...moisture, daily: [], why: 'No moisture was read.', perHundredFanHours: withheld('No moisture was read.') },
      ZONE,
    );
    expect(none).toMatchObject({ line: null, months: [], days: [], why: 'No moisture was read.' });
    expect(none.season?.perHundredFanHours.why).toBe('No moisture was read.');
  });
});

describe('a fan that ran while the bin was empty', () => {
  it('has no part in the rate: hours and energy of before and after are left out', () => {
    const { fan, moisture } = made({ points: (h) => 0.004 * h });
    // 100 h and 1,000 kWh more in the log, before the grain came.
    const more = {
      ...fan,
      hours: estimate(832, 832, 832),
      energyKwh: estimate(8320, 7904, 8736),
      outside: { hoursBefore: 100, hoursAfter: 0, energyKwh: 1000, energyCost: null },
    };
    const told = moistureRates(more, moisture, ZONE);
    const bare = moistureRates(fan, moisture, ZONE);
    expect(told.season?.fanHours).toBe(732);
    expect(told.season?.kwhPerPoint.value).toBeCloseTo(bare.season!.kwhPerPoint.value!, 6);
    expect(told.line?.kwhPerPoint.value).toBeCloseTo(2500, 3);
  });
});
