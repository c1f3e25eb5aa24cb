import { describe, expect, it } from 'vitest';
import { against, type HeldBack } from '../../src/analysis/strategies/held-back.ts';
import type { YearAir } from '../../src/analysis/strategies/held-back-run.ts';
import { strategyYearsSection } from '../../src/notebook/strategy-years.ts';
import { yearSaid } from '../../src/notebook/strategy-years-words.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('si', 'USD', 'America/Chicago');
const year = (weather: string, more: Partial<YearAir>): YearAir => ({
  weather,
  reached: true,
  reachedMs: Date.parse(`${weather}-11-07T06:00:00Z`),
  days: 36,
  fanHours: 432,
  hoursPerDay: 12,
  plenumC: 12,
  plenumRh: 0.5,
  plenumEmcWb: 0.125,
  canTake: 0.0015,
  asWarm: 0.0015,
  airKgM3: 1.2,
  took: 0.0012,
  water: 0.06,
  ...more,
});
const best = year('2017', {});
const held = (air: YearAir, late = false): HeldBack => ({
  ...against(air, best),
  days: air.reached ? air.days : null,
  late: late || !air.reached,
});
// By hand: 9 hours a day in place of 12 make 48 days of 36; half of what air can take at 12 hours makes 72.
const damp = held(year('2016', { days: 48, hoursPerDay: 9 }));
const cold = held(year('2018', { days: 72, plenumC: 4, asWarm: 0.00075, canTake: 0.00075, took: 0.0006 }));

describe('yearSaid', () => {
  it('tells a damp year by its hours, a cold one by its air', () => {
    expect(yearSaid(damp, best, units)).toBe(
      '2016 took 48 days, 12 more than 2017: the fan could run only 9.0 hours a day in place of 12.0; the air was as warm (12 °C and 12 °C).',
    );
    expect(yearSaid(cold, best, units)).toBe(
      '2018 took 72 days, 36 more than 2017: the fan’s air at 4 °C in place of 12 °C carries 50 % less water.',
    );
  });

  it('tells a year that was not done by what was out by then', () => {
    const air = year('2019', { reached: false, reachedMs: null, hoursPerDay: 6, water: 0.03 });
    expect(yearSaid(held(air), best, units)).toMatch(
      /^2019 did not get there; by as many days as 2017 took, 50 % of that year’s water was out: the fan could run only 6\.0/,
    );
  });

  it('says it where nothing differed', () => {
    expect(yearSaid(held(year('2020', {})), best, units)).toBe(
      '2020 took 36 days, as many as 2017; its air and hours hardly differed.',
    );
  });
});

describe('strategyYearsSection', () => {
  const years = { best, others: [damp, cold], untold: [{ weather: '2015', why: 'No weather is on file for it.' }] };
  const bin = { name: 'North', rules: [{ id: 'humidity-limit', title: 'Humidity limit', years }], why: null };

  it('leads with the first year and the slowest, and tells each', () => {
    const section = strategyYearsSection([bin], units);
    expect(section.lead).toMatch(/^North: Humidity limit was done first in 2017, on 6 Nov 2017\. 2018 took 72 days/);
    expect(section.entries?.[0].details).toHaveLength(2);
    expect(section.notes).toContain('North, 2015: No weather is on file for it.');
    expect(section.tables?.[0].rows.map((row) => row.year)).toEqual(['2016', '2017', '2018']);
    expect(section.tables?.[1].rows.map((row) => [row.year, row.hours, row.warmth])).toEqual([
      ['2016', 12 / 9, 1],
      ['2018', 1, 2],
    ]);
  });

  it('tells a year that took longest first, and one that was not done before it', () => {
    const slow = { ...held(year('2020', { hoursPerDay: 6, water: 0.03 }), true), days: 250 };
    const never = held(year('2021', { reached: false, reachedMs: null, hoursPerDay: 6, water: 0.03 }));
    const rules = [{ ...bin.rules[0], years: { ...years, others: [damp, slow, cold, never] } }];
    const [{ details = [] }] = strategyYearsSection([{ ...bin, rules }], units).entries ?? [];
    expect(details.map((said) => said.slice(0, 18))).toEqual([
      '2021 did not get t',
      '2020 took 250 days',
      '2018 took 72 days,',
      'The table tells of',
    ]);
  });

  it('a season without other years says so and what to do', () => {
    const why =
      'No weather of other years is on file. Add an archive of past weather to season.yaml under files with role: history.';
    const section = strategyYearsSection([{ name: 'North', rules: [], why }], units);
    expect(section).toEqual({ lead: `Can’t tell of other years. ${why}` });
    // Reasons that differ say whose they are.
    const bare = (name: string, reason: string) => ({ name, rules: [] as const, why: reason });
    expect(strategyYearsSection([bare('North', 'No model.'), bare('South', 'It was cooled.')], units).lead).toBe(
      'Can’t tell of other years. North: No model. South: It was cooled.',
    );
  });
});
