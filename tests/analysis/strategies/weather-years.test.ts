import { describe, expect, it } from 'vitest';
import { MADE_TARIFF, madeAir, madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { relativeHumidityOfRatio } from '../../../src/air/humidity-ratio.ts';
import { carryDate } from '../../../src/analysis/strategies/carry-date.ts';
import { hourlyAir } from '../../../src/analysis/strategies/hourly-air.ts';
import { airWithin, type OutdoorAir } from '../../../src/analysis/strategies/outdoor-air.ts';
import { yearSpec, yearsOnFile } from '../../../src/analysis/strategies/weather-years.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';

const CHICAGO = zoneOf('America/Chicago');
const HOUR_MS = 3_600_000;
const SITE = { zone: CHICAGO, tariff: MADE_TARIFF };
const utc = (text: string) => Date.parse(text);

describe('carryDate', () => {
  // Days by the calendar, clock changes by the US rule since 2007 (second Sunday of March, first of November) and from 1987 to
  // 2006 (first Sunday of April, last of October): 15 U.S.C. 260a.
  it.each([
    ['an autumn evening', '2024-10-05T23:00:00Z', -13, '2011-10-05T23:00:00Z'],
    ['4 November: daylight time in 2012, standard time in 2024', '2024-11-04T18:00:00Z', -13, '2011-11-04T17:00:00Z'],
    [
      '29 October: still daylight time in 2024, standard time in 2000',
      '2024-10-29T17:00:00Z',
      -24,
      '2000-10-29T18:00:00Z',
    ],
    ['29 February where there is one', '2024-02-29T18:00:00Z', -4, '2020-02-29T18:00:00Z'],
    ['29 February where there is none', '2024-02-29T18:00:00Z', -1, '2023-02-28T18:00:00Z'],
    // 2:30 on 10 March 2013 was left out: the clock went from 2:00 to 3:00 CDT, 8:00 UTC.
    ['a time that spring leaves out', '2024-03-10T08:30:00Z', 0, '2024-03-10T08:30:00Z'],
    ['the same of another year', '2022-03-10T08:30:00Z', -9, '2013-03-10T08:00:00Z'],
    // 1:30 on 6 November 2011 came twice: first as CDT, 6:30 UTC.
    ['a time that autumn repeats', '2024-11-06T07:30:00Z', -13, '2011-11-06T06:30:00Z'],
  ])('%s', (_, from, years, to) => {
    expect(new Date(carryDate(CHICAGO, utc(from), years)).toISOString()).toBe(new Date(utc(to)).toISOString());
  });
});

/** Air that is a straight line of its instant, from readings at these hours. */
function lineAir(hours: readonly number[], hourMean = false): OutdoorAir {
  const at = Float64Array.from(hours);
  return {
    timeMs: at.map((hour) => (hour + (hourMean ? 0.5 : 0)) * HOUR_MS),
    tempC: at.map((hour) => 5 + 0.25 * hour),
    humidityRatio: at.map((hour) => 0.004 + 0.0001 * hour),
    hourMean: new Uint8Array(at.length).fill(hourMean ? 1 : 0),
    typical: [],
  };
}

const upTo = (hours: number, step = 1) => Array.from({ length: hours / step + 1 }, (_, i) => i * step);

describe('hourlyAir', () => {
  it('averages observations over the hour: of a straight line the middle', () => {
    for (const step of [1, 3]) {
      const { tempC, humidityRatio, rh, bridged, lacking } = hourlyAir(lineAir(upTo(24, step)), 0, 24, 98_000);
      expect({ bridged, lacking }).toEqual({ bridged: 0, lacking: 0 });
      tempC.forEach((t, hour) => {
        expect(t).toBeCloseTo(5 + 0.25 * (hour + 0.5), 10);
        expect(humidityRatio[hour]).toBeCloseTo(0.004 + 0.0001 * (hour + 0.5), 12);
        expect(rh[hour]).toBeCloseTo(relativeHumidityOfRatio(t, humidityRatio[hour], 98_000), 10);
      });
    }
  });

  it('weighs readings at odd minutes by their time: 0 to 20 minutes at 0 degC, a jump within a minute, then 10 degC', () => {
    const air = {
      timeMs: Float64Array.from([0, 20 / 60, 21 / 60, 2], (hour) => hour * HOUR_MS),
      tempC: Float64Array.of(0, 0, 10, 10),
      humidityRatio: new Float64Array(4).fill(0.003),
      hourMean: new Uint8Array(4),
      typical: [],
    };
    // By hand: 20 min at 0, 1 min at 5 on average, 39 min at 10.
    expect(hourlyAir(air, 0, 1, 98_000).tempC[0]).toBeCloseTo((5 + 390) / 60, 10);
  });

  it('takes the mean of an hour as it stands', () => {
    const air = lineAir(upTo(5), true);
    air.tempC[2] = 30;
    expect([...hourlyAir(air, 0, 5, 98_000).tempC]).toEqual([5, 5.25, 30, 5.75, 6]);
  });

  it('bridges six hours, not seven, and says where the gap is', () => {
    const without = (from: number, to: number) => lineAir(upTo(48).filter((hour) => hour <= from || hour >= to));
    const six = hourlyAir(without(10, 16), 0, 48, 98_000);
    expect([six.bridged, six.lacking]).toEqual([6, 0]);
    expect(six.tempC[12]).toBeCloseTo(5 + 0.25 * 12.5, 10);
    const seven = hourlyAir(without(10, 17), 0, 48, 98_000);
    expect([seven.bridged, seven.lacking, seven.longestGapH, seven.longestGapFromMs]).toEqual([0, 7, 7, 10 * HOUR_MS]);
    expect(seven.tempC.filter(Number.isNaN)).toHaveLength(7);
  });

  it('holds the first and last reading for an hour, no longer', () => {
    const { lacking, tempC } = hourlyAir(lineAir([1, 2, 3]), 0, 6, 98_000);
    expect(lacking).toBe(2);
    expect([...tempC.slice(0, 4)]).toEqual([5.25, 5.375, 5.625, 5.75]);
  });

  it('hangs on no reading but those that `airWithin` keeps', () => {
    const air = madeAir(2);
    const from = air.timeMs[1000] + 20 * 60_000;
    const part = airWithin(air, from, from + 500 * HOUR_MS);
    expect(part.timeMs.length).toBe(502);
    expect(hourlyAir(part, from, 500, 98_000)).toEqual(hourlyAir(air, from, 500, 98_000));
  });
});

describe('yearSpec', () => {
  const air = madeAir(14);
  const farm = madeFarm({ bins: 1, years: 14, days: 160, layers: 8 });
  const spec = farm.bins[0].spec!;

  it('gives the season back in its own year', () => {
    expect(yearSpec(spec, air, SITE, 2024).spec).toEqual(spec);
  });

  it('keeps local dates over New Year, the clock changes and a leap day', () => {
    // 1 October 2024 17:00 CDT, 160 days of 24 hours: to 10 March 2025 17:00 CDT.
    const run = (year: number) => {
      const { spec: made } = yearSpec(spec, air, SITE, year);
      const { hours, endHour } = made!;
      return { from: hours.startMs, to: hours.startMs + endHour * HOUR_MS, endHour, hours };
    };
    const of2012 = run(2012);
    expect(of2012.from).toBe(utc('2012-10-01T22:00:00Z'));
    expect(of2012.to).toBe(utc('2013-03-10T22:00:00Z'));
    // To 10 March 2015, 17:00 CDT; to 10 March 2016, 17:00 CST: a leap day more, and the hour that daylight time took in 2015 already.
    expect(run(2014).endHour).toBe(3840);
    expect(run(2015).endHour).toBe(3840 + 25);
    expect(of2012.hours.localHour[0]).toBe(17);
    expect(of2012.hours.localMonth[of2012.endHour - 1]).toBe(3);
    // 4 November 2012 has 25 hours.
    const hoursOn = (date: string) => {
      const day = (utc(`${date}T00:00:00Z`) - utc('2012-10-01T00:00:00Z')) / (24 * HOUR_MS);
      return of2012.hours.localDay.filter((one) => one === day).length;
    };
    expect([hoursOn('2012-11-03'), hoursOn('2012-11-04'), hoursOn('2012-11-05')]).toEqual([24, 25, 24]);
  });

  it('takes prices by the local clock of that year', () => {
    const { hours } = yearSpec(spec, air, SITE, 2012).spec!;
    hours.pricePerKwh.forEach((price, hour) => {
      const at = hours.localHour[hour];
      expect(price).toBe(at >= 22 || at < 6 ? 0.074 : 0.109);
      expect(hours.demand[0].holds[hour]).toBe(at >= 7 && at < 22 ? 1 : 0);
    });
  });

  it('carries the filling and what is taken out on their local dates', () => {
    const steps = [0, 24 * 4, 24 * 100].map((hour, i) => ({ ...spec.levels[0], hour, depthM: 2 + i }));
    const filled: RunSpec = { ...spec, levels: steps, fromHour: 24 * 4 };
    const late = yearSpec(filled, air, SITE, 2015, 7).spec!;
    // 7 days later, the end on its date: 7 days fewer. What is taken out in January keeps its date.
    expect(late.endHour).toBe(yearSpec(filled, air, SITE, 2015).spec!.endHour - 24 * 7);
    expect([late.levels[0].hour, late.levels[1].hour, late.fromHour]).toEqual([0, 24 * 4, 24 * 4]);
    expect(late.levels[2].hour).toBe(24 * 93);
    expect(late.hours.startMs).toBe(utc('2015-10-08T22:00:00Z'));
  });

  it('says why a year cannot be run', () => {
    const hole = (from: number, to: number): OutdoorAir => {
      const keep = [...air.timeMs.keys()].filter((i) => !(air.timeMs[i] > from && air.timeMs[i] < to));
      const pick = (of: Float64Array) => Float64Array.from(keep, (i) => of[i]);
      return {
        timeMs: pick(air.timeMs),
        tempC: pick(air.tempC),
        humidityRatio: pick(air.humidityRatio),
        hourMean: new Uint8Array(keep.length),
        typical: [],
      };
    };
    const from = utc('2013-12-24T06:00:00Z');
    expect(yearSpec(spec, hole(from, from + 30 * HOUR_MS), SITE, 2013).why).toBe(
      'Its weather has a gap of 30 hours from 2013-12-24 on; 6 hours can be bridged, 30 of 3,840 hours are lacking.',
    );
    expect(yearSpec(spec, hole(from, from + 6 * HOUR_MS), SITE, 2013).why).toBeNull();
    expect(yearSpec(spec, air, SITE, 1990).why).toBe('No weather is on file for it.');
  });

  it('leaves a year out of which too little is read at the usual pace', () => {
    // Two days of three at 4 hours between readings: bridged, yet 95 % are due.
    const keep = [...air.timeMs.keys()].filter((i) => i % 4 === 0 || Math.floor(i / 24) % 3 === 0);
    const sparse = {
      timeMs: Float64Array.from(keep, (i) => air.timeMs[i]),
      tempC: Float64Array.from(keep, (i) => air.tempC[i]),
      humidityRatio: Float64Array.from(keep, (i) => air.humidityRatio[i]),
      hourMean: new Uint8Array(keep.length),
      typical: [],
    };
    expect(yearSpec(spec, sparse, SITE, 2013).why).toMatch(/^Only 3\d\.\d % of its hours lie between readings/);
  });

  it('finds the years that the weather tells of', () => {
    const { startMs } = spec.hours;
    const stretch = [startMs, startMs + spec.endHour * HOUR_MS] as const;
    const years = yearsOnFile(...stretch, air, CHICAGO);
    expect(years).toEqual(Array.from({ length: 14 }, (_, i) => 2011 + i));
    expect(yearsOnFile(...stretch, lineAir([]), CHICAGO)).toEqual([]);
  });

  it('finds no year of which a file of the next one, by UTC, tells its last evening', () => {
    const { startMs } = spec.hours;
    const stretch = [startMs, startMs + spec.endHour * HOUR_MS] as const;
    // From New Year 2014 by UTC on: 18:00 of 31 December 2013 in Chicago, and the January of a run that began in 2013.
    const from = air.timeMs.findIndex((ms) => ms >= utc('2014-01-01T00:00:00Z'));
    const cut = (at: number) => ({
      timeMs: air.timeMs.subarray(at),
      tempC: air.tempC.subarray(at),
      humidityRatio: air.humidityRatio.subarray(at),
      hourMean: air.hourMean.subarray(at),
      typical: [],
    });
    expect(yearsOnFile(...stretch, cut(from), CHICAGO)[0]).toBe(2014);
    // A whole day of its own is told, with what it lacks.
    expect(yearsOnFile(...stretch, cut(from - 24), CHICAGO)[0]).toBe(2013);
  });
});
