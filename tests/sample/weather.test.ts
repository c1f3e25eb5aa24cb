import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { dewPointC, saturationPa } from '../../scripts/sample/air.ts';
import { inventWeather, isdLite } from '../../scripts/sample/weather.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
const weather = inventWeather(7, Date.UTC(2019, 0, 1), Date.UTC(2022, 0, 2));

test('air is never above saturation and its humidity belongs to its dew point', () => {
  for (let i = 0; i < weather.tempC.length; i++) {
    expect(weather.dewPointC[i]).toBeLessThanOrEqual(weather.tempC[i]);
    expect(weather.rh[i]).toBeGreaterThan(0.05);
    expect(weather.rh[i]).toBeLessThanOrEqual(1);
  }
});

// Climate of the region, common knowledge of an Iowa year: January about -7 C, July about 23 C, humidity by day lower than by night.
test('years look like the upper Middle West', () => {
  const mean = (month: number, values: Float64Array, hours: (hour: number) => boolean = () => true) => {
    const picked = [...values].filter((_, i) => {
      const date = new Date(weather.startMs + i * 3_600_000);
      return date.getUTCMonth() === month && hours(date.getUTCHours());
    });
    return picked.reduce((sum, value) => sum + value, 0) / picked.length;
  };
  expect(Math.abs(mean(0, weather.tempC) + 7)).toBeLessThan(5);
  expect(Math.abs(mean(6, weather.tempC) - 23)).toBeLessThan(4);
  expect(mean(6, weather.tempC, (hour) => hour === 21) - mean(6, weather.tempC, (hour) => hour === 11)).toBeGreaterThan(
    7,
  );
  expect(mean(9, weather.rh, (hour) => hour === 21)).toBeLessThan(mean(9, weather.rh, (hour) => hour === 11) - 0.1);
});

// Saturation over water against psychrolib (ASHRAE 2017 equations) above freezing; Buck's fit agrees to a few tenths of a percent.
test('saturation agrees with ASHRAE, and dew point is its inverse', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  for (let c = 1; c <= 40; c += 3) {
    expect(Math.abs(saturationPa(c) / psychrolib.GetSatVapPres(c) - 1)).toBeLessThan(0.003);
    expect(dewPointC(saturationPa(c))).toBeCloseTo(c, 6);
  }
});

// The layout of NOAA's ISD-Lite: year, month, day, hour, then eight fields of six characters; air and dew point in tenths of a degree.
test('a year in ISD-Lite has its fixed columns', () => {
  const lines = isdLite(weather, 2020, 7).split('\n').slice(0, -1);
  expect(lines.length).toBeGreaterThan(8784 * 0.99);
  expect(lines.length).toBeLessThan(8784);
  let previous = '';
  for (const line of lines) {
    expect(line).toMatch(/^2020 \d\d \d\d \d\d(?: {1,5}-?\d{1,5}){8}$/);
    expect(line.length).toBe(13 + 8 * 6);
    expect(line.slice(0, 13) > previous).toBe(true);
    previous = line.slice(0, 13);
    const [temp, dew] = [line.slice(13, 19), line.slice(19, 25)].map(Number);
    expect(temp === -9999 ? dew === -9999 : dew <= temp).toBe(true);
  }
});
