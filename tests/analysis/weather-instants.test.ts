import { describe, expect, it } from 'vitest';
import { weatherRows } from '../../src/analysis/air-rows.ts';
import { hoursOfWeather } from '../../src/analysis/model/hours-of-weather.ts';
import { hourlyAir } from '../../src/analysis/strategies/hourly-air.ts';
import { outdoorAir } from '../../src/analysis/strategies/outdoor-air.ts';
import { loadOf } from '../season/readers/load-of.ts';
import { fileOf } from '../season/readers/season-of.ts';

const HOUR_MS = 3_600_000;
// Hour 1 of 1 October starts at local standard midnight, UTC-6.
const START_MS = Date.UTC(2024, 9, 1, 6);
const HOURS = 12;

/** A day that warms by 1 K an hour, each record the mean of its time (EPW data dictionary: intervals told by their ends). */
function epw(perHour: 1 | 4): string {
  const lines = [
    'LOCATION,Nowhere,XX,USA,hand-made,999999,42.00,-94.00,-6.0,300.0',
    `DATA PERIODS,1,${perHour},Data,Tuesday,10/ 1,10/ 1`,
  ];
  for (let i = 0; i < HOURS * perHour; i++) {
    const tempC = (i + 0.5) / perHour;
    const minute = perHour === 1 ? 0 : 15 * ((i % 4) + 1);
    lines.push(`2024,10,1,${Math.floor(i / perHour) + 1},${minute},?9,${tempC},-5.0,60,98000,0,0,300,0`);
  }
  return `${lines.join('\n')}\n`;
}
const load = (text: string, role: 'season' | 'history') =>
  loadOf({ w: text }, [fileOf('weather', 'w', { format: 'epw', role })]);

/** Of a steady rise the mean of an hour is what stood half-way through it. */
const due = Array.from({ length: HOURS }, (_, hour) => hour + 0.5);

describe('the means of an EPW file', () => {
  it.each([1, 4] as const)('%d an hour: the season’s hours have the temperatures that they had', async (perHour) => {
    const loaded = await load(epw(perHour), 'season');
    const { rows } = weatherRows(loaded);
    expect(rows.time[0]).toBe(START_MS + HOUR_MS / (2 * perHour));
    const { hours } = hoursOfWeather(loaded.season, null, weatherRows(loaded), START_MS, HOURS)!;
    hours.tempC.forEach((tempC, hour) => {
      expect(tempC).toBeCloseTo(due[hour], 9);
    });
  });

  it.each([1, 4] as const)('%d an hour: those of other years too', async (perHour) => {
    const air = outdoorAir(await load(epw(perHour), 'history'), 98_000);
    const { tempC } = hourlyAir(air, START_MS, HOURS, 98_000);
    // Before the first and after the last record a line has nowhere to go on to.
    expect(tempC.slice(1, -1).every((value, i) => Math.abs(value - due[i + 1]) < 1e-9)).toBe(true);
  });

  it('stay where they are in the table: by their starts', async () => {
    const { tables } = await load(epw(1), 'season');
    expect(Number(tables.weather.get(0)?.time)).toBe(START_MS);
  });
});
