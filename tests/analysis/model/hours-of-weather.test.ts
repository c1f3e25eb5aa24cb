import { describe, expect, it } from 'vitest';
import { airLog } from '../../../src/analysis/fronts/air-log.ts';
import { hoursOfWeather } from '../../../src/analysis/model/hours-of-weather.ts';
import type { Season } from '../../../src/season/season.ts';
import { psychrolibSi } from '../../support/psychrolib-si.ts';

const H = 3_600_000;
const START = Date.UTC(2024, 9, 4);
const SITE = { timeZone: 'America/Chicago', elevationM: 300 };
const season = { site: SITE } as unknown as Season;

/** Weather on the half hours, so that each reading is the middle of its hour. */
function weatherOf(tempC: readonly number[], rh: readonly number[], pressurePa: readonly number[] = []) {
  const rows = {
    time: Float64Array.from(tempC, (_, i) => START + (i + 0.5) * H),
    temp_c: Float64Array.from(tempC),
    rh: Float64Array.from(rh),
    dew_point_c: new Float64Array(tempC.length).fill(Number.NaN),
    pressure_pa: Float64Array.from(tempC, (_, i) => pressurePa[i] ?? Number.NaN),
    flags: new Float64Array(tempC.length),
  };
  return { rows, temperatures: airLog(rows) };
}

const day = Array.from({ length: 24 }, (_, hour) => 10 + hour / 4);
const steady = (count: number, value: number) => new Array<number>(count).fill(value);

describe('outdoor air hour by hour', () => {
  it('is the log where there is one, its water by an independent library', () => {
    const found = hoursOfWeather(season, null, weatherOf(day, steady(24, 0.6), steady(24, 98_000)), START, 24)!;
    expect(found.madeUpHours).toBe(0);
    expect(found.hours.pressurePa).toBe(98_000);
    // psychrolib 2 (ASHRAE 2017): within a few 1e-6 kg/kg, for both round the saturation pressure their own way.
    for (const hour of [0, 12, 23]) {
      expect(found.hours.tempC[hour]).toBeCloseTo(day[hour], 9);
      const ratio = psychrolibSi('GetHumRatioFromRelHum', day[hour], 0.6, 98_000);
      expect(Math.abs(found.hours.humidityRatio[hour] - ratio)).toBeLessThan(5e-6);
      expect(found.hours.rh[hour]).toBeCloseTo(0.6, 4);
    }
  });

  it('takes the standard pressure of the height where none was logged', () => {
    const found = hoursOfWeather(season, null, weatherOf(day, steady(24, 0.6)), START, 24)!;
    expect(Math.abs(found.hours.pressurePa - psychrolibSi('GetStandardAtmPressure', 300))).toBeLessThan(1);
  });

  it('bridges a short hole by a straight line and counts nothing as made up', () => {
    const holed = day.map((value, hour) => (hour > 9 && hour < 14 ? Number.NaN : value));
    const found = hoursOfWeather(season, null, weatherOf(holed, steady(24, 0.6)), START, 24)!;
    expect(found.madeUpHours).toBe(0);
    expect(found.hours.tempC[12]).toBeCloseTo(13, 6);
  });

  it('holds on for six hours into a long hole, fills the rest by the same hour of the nearest day and counts it', () => {
    const two = [...day, ...day.map((value) => value + 5)];
    const holed = two.map((value, hour) => (hour >= 24 && hour < 40 ? Number.NaN : value));
    const found = hoursOfWeather(season, null, weatherOf(holed, steady(48, 0.6)), START, 48)!;
    expect(found.count).toBe(48);
    expect(found.madeUpHours).toBe(4);
    expect(found.hours.tempC[27]).toBeCloseTo(two[23], 9);
    for (const hour of [30, 33]) expect(found.hours.tempC[hour]).toBeCloseTo(day[hour - 24], 9);
    expect(found.hours.tempC[36]).toBeCloseTo(two[40], 9);
  });

  it('is nothing where no weather was logged', () => {
    expect(hoursOfWeather(season, null, weatherOf([], []), START, 24)).toBeNull();
  });

  it('has the local clock: 4 October 0 h UTC is 19 h of the day before in Iowa', () => {
    const { hours } = hoursOfWeather(season, null, weatherOf(day, steady(24, 0.6)), START, 24)!;
    expect([...hours.localHour.slice(0, 6)]).toEqual([19, 20, 21, 22, 23, 0]);
    expect([...hours.localDay.slice(4, 6)]).toEqual([0, 1]);
    expect(hours.pricePerKwh.every(Number.isNaN)).toBe(true);
  });
});
