import { describe, expect, it } from 'vitest';
import { percentileYears } from '../../../src/analysis/strategies/percentile-years.ts';
import { reachedBy } from '../../../src/analysis/strategies/reached-by.ts';
import { regretOf } from '../../../src/analysis/strategies/regret.ts';
import { sensitivity } from '../../../src/analysis/strategies/sensitivity.ts';
import { strategyYears } from '../../../src/analysis/strategies/strategy-years.ts';
import type { SweepRow } from '../../../src/analysis/strategies/sweep-columns.ts';
import { wilsonInterval } from '../../../src/analysis/strategies/wilson.ts';

describe('wilsonInterval', () => {
  // Newcombe (1998), Statistics in Medicine 17:857, table I, method 3, 95 %; printed to four digits. From memory.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i', (hits, tries, low, high) => {
    const [a, b] = wilsonInterval(hits, tries, 0.95);
    expect(Math.abs(a - low)).toBeLessThanOrEqual(0.00005 + 1e-9);
    expect(Math.abs(b - high)).toBeLessThanOrEqual(0.00005 + 1e-9);
  });

  it('mirrors, and refuses no try', () => {
    const [low, high] = wilsonInterval(3, 11);
    const [other] = wilsonInterval(8, 11);
    expect(other).toBeCloseTo(1 - high, 12);
    expect(low).toBeGreaterThan(0);
    expect(() => wilsonInterval(0, 0)).toThrow(RangeError);
  });
});

describe('percentileYears', () => {
  const years = (n: number) =>
    Array.from({ length: n }, (_, i) => ({ weather: String(2000 + i), value: ((i * 7) % n) + 1 }));

  it('names the years by nearest rank', () => {
    // Of the values 1 to 20 in another order: ranks 2, 10 and 18.
    const told = percentileYears(years(20));
    expect([told.p10?.value, told.p50?.value, told.p90?.value]).toEqual([2, 10, 18]);
    expect(years(20).find(({ value }) => value === 18)?.weather).toBe(told.p90?.weather);
  });

  it('withholds the outer ones of few years', () => {
    const told = percentileYears(years(9));
    expect([told.p10, told.p50?.value, told.p90]).toEqual([null, 5, null]);
    expect(told.why).toContain('9 years are too few');
  });
});

const row = (strategy: string, weather: string, cost: number | null, more: SweepRow = {}): SweepRow => ({
  bin: 'B1',
  strategy,
  weather,
  airflowFactor: 1,
  fillDays: 0,
  startPoints: 0,
  fanHours: cost === null ? null : 100,
  cost,
  costPerBushel: cost === null ? null : cost / 1000,
  endMoisturePct: 15,
  storageLifeUsed: 0.2,
  reachedTarget: cost === null ? null : true,
  reachedOn: cost === null ? null : `${weather === 'season' ? 2024 : weather}-11-20`,
  why: cost === null ? 'It broke.' : null,
  ...more,
});

describe('reachedBy', () => {
  it('counts the days up to the date, the turn of the year among them', () => {
    const rows = [
      row('a', 'season', 1),
      row('a', '2010', 1, { reachedOn: '2011-01-10' }),
      row('a', '2011', 1, { reachedOn: '2011-11-15' }),
      row('a', '2012', 1, { reachedTarget: false, reachedOn: null }),
      row('a', '2013', null),
    ];
    const hits = (by: string | null) => reachedBy(rows, '2024-10-05', by);
    expect([hits('11-14').reached, hits('11-15').reached, hits('11-20').reached]).toEqual([0, 1, 2]);
    expect([hits('01-09').reached, hits('01-10').reached, hits(null).reached]).toEqual([2, 3, 3]);
    expect(hits(null).years).toBe(4);
    expect(hits(null).chance).toBe(0.75);
  });
});

describe('regret', () => {
  const same = [
    row('a', '2010', 500),
    row('b', '2010', 300),
    row('c', '2010', 100, { reachedTarget: false }),
    row('best-in-hindsight', '2010', 250),
  ];
  it('is money over the best that reached the target', () => {
    expect(regretOf(same[0], same, 'best-in-hindsight').money).toBe(250);
    expect(regretOf(same[0], same.slice(0, 3), 'cheapest strategy that reached the target').money).toBe(200);
  });
  it('is not told of a strategy that did not get there, nor without a yardstick', () => {
    expect(regretOf(same[2], same, 'best-in-hindsight')).toMatchObject({
      money: null,
      why: 'It did not reach the target.',
    });
    expect(regretOf(same[0], same.slice(0, 3), 'best-in-hindsight').money).toBeNull();
  });
});

describe('strategyYears and sensitivity', () => {
  it('tell mean and spread over the years that could be run', () => {
    const rows = [row('a', '2010', 100), row('a', '2011', 200), row('a', '2012', 600), row('a', '2013', null)];
    const told = strategyYears(rows, rows, '2024-10-05', ['11-30'], 'cheapest strategy that reached the target');
    // By hand: mean 300, deviations -200, -100, 300, so the sample's standard deviation is the root of 70000.
    expect(told.costPerBushel.mean).toBeCloseTo(0.3, 12);
    expect(told.costPerBushel.sd).toBeCloseTo(Math.sqrt(70_000) / 1000, 12);
    expect([told.years, told.costPerBushel.least, told.costPerBushel.most]).toEqual([3, 0.1, 0.6]);
    expect(told.regret).toMatchObject({ mean: 0, notComparable: 0 });
  });

  it('pair each step with the bin as it is in the same year', () => {
    const rows = [
      row('a', '2010', 100),
      row('a', '2011', 200),
      row('a', '2010', 130, { airflowFactor: 2 }),
      row('a', '2011', 240, { airflowFactor: 2 }),
      row('a', '2012', 900, { airflowFactor: 2 }),
    ];
    const steps = sensitivity(rows, '2024-10-05');
    expect(steps.map(({ varied, step }) => `${varied} ${step}`)).toEqual([
      'airflow 0.5',
      'airflow 0.75',
      'airflow 1.25',
      'airflow 1.5',
      'airflow 2',
    ]);
    expect(steps[4]).toMatchObject({ years: 2, costChange: 35, reached: 2 });
    expect(steps[0]).toMatchObject({ years: 0, costChange: null, why: 'No year could be run.' });
  });

  it('tell when each step reaches, by how many days later, and what it loses', () => {
    const moved = (weather: string, reachedOn: string | null, dryMatterLossPct: number) =>
      row('a', weather, 50, { airflowFactor: 0.5, reachedTarget: reachedOn !== null, reachedOn, dryMatterLossPct });
    const usual = (weather: string, reachedOn: string) => row('a', weather, 100, { reachedOn, dryMatterLossPct: 0.2 });
    const [half] = sensitivity(
      [
        ...[usual('season', '2024-11-20'), usual('2010', '2010-11-10'), usual('2011', '2011-11-15')],
        // After New Year is later than before it, whatever the day is called.
        ...[moved('season', '2025-01-09', 0.3), moved('2010', '2010-12-30', 0.5), moved('2011', null, 0.4)],
      ],
      '2024-10-05',
    );
    expect(half.reachedOn).toEqual({ first: '12-30', last: '01-09' });
    expect(half.base.reachedOn).toEqual({ first: '11-10', last: '11-20' });
    // 50 days in both of the two years that reach both ways, counted on a calendar.
    expect(half.daysLater).toBe(50);
    expect([half.reached, half.base.reached]).toEqual([2, 3]);
    expect(half.dryMatterLossPct.mean).toBeCloseTo(0.4, 12);
    expect(half.base.dryMatterLossPct.mean).toBeCloseTo(0.2, 12);
  });
});
