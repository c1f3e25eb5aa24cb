import { describe, expect, it } from 'vitest';
import type { MoistureRates, RateDay, RatePeriod } from '../../src/analysis/rates/moisture-rates-types.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { ratesSection } from '../../src/notebook/rates-section.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const ZERO = 'The rate may be zero.';

const period = (key: string, over: Partial<RatePeriod> = {}): RatePeriod => ({
  key,
  fanHours: 600,
  days: 40,
  stillDays: 40,
  perHundredFanHours: estimate(0.5, 0.4, 0.6),
  hoursPerPoint: estimate(200, 167, 250),
  kwhPerPoint: estimate(2000, 1670, 2500),
  ...over,
});

const days = Array.from(
  { length: 40 },
  (_, i): RateDay => ({
    dayMs: i * 86_400_000,
    fanHours: i < 30 ? 20 * i : 600,
    points: i < 30 ? 0.1 * i : 3,
    low: 0.1 * i - 0.2,
    high: 0.1 * i + 0.2,
    stillAir: i % 5 !== 0,
  }),
);

const reviewOf = (name: string, rates: MoistureRates | null) =>
  ({
    bin: { name },
    failure: null,
    fan: { hours: withheld('No log tells what fan F1 did.') },
    rates,
  }) as unknown as BinReview;

const north = reviewOf('North', {
  season: period('season'),
  line: period('line'),
  months: [period('2024-10'), period('2024-11', { hoursPerPoint: withheld(ZERO), kwhPerPoint: withheld(ZERO) })],
  days,
  notes: ['A note.'],
  why: null,
});

describe('fan hours against points, on the page', () => {
  it('leads with the hours that a point took, and draws a panel a bin', () => {
    const section = ratesSection([north, reviewOf('South', null)], units);
    expect(section.lead).toBe('A point of moisture removed took 200 h (167 to 250) in North.');
    const [figure] = section.figures ?? [];
    expect(figure.title).toBe('North changed fastest: 0.50 points per 100 fan hours (0.40 to 0.60)');
    expect(figure.notShown).toMatch(/South/);
    for (const narrow of [false, true]) {
      const svg = figure.draw({ width: narrow ? 360 : 900, narrow, idPrefix: 'x' });
      expect(svg).not.toMatch(/NaN|undefined/);
      // 30 days of running, and ten days of one rest as one: each a dot
      expect(svg.match(/<circle/g)).toHaveLength(31);
    }
  });

  it('tells points that a bin took up apart from those removed', () => {
    const up = reviewOf('South', {
      ...(north.rates as MoistureRates),
      season: period('season', { perHundredFanHours: estimate(-0.5, -0.6, -0.4) }),
    });
    expect(ratesSection([north, up], units).lead).toBe(
      'A point of moisture removed took 200 h (167 to 250) in North. A point of moisture added took 200 h (167 to 250) in South.',
    );
    expect(ratesSection([up], units).lead).toBe('A point of moisture added took 200 h (167 to 250) in South.');
  });

  it('calls none the fastest by a rate that may be zero, nor where another may have been as fast', () => {
    const at = (name: string, value: number, low: number, high: number) =>
      reviewOf(name, {
        ...(north.rates as MoistureRates),
        season: period('season', { perHundredFanHours: estimate(value, low, high) }),
      });
    const title = (...bins: BinReview[]) => ratesSection(bins, units).figures?.[0].title;
    const unsure = at('South', 0.56, -0.15, 0.83);
    expect(title(unsure)).toBe('Points removed by fan hours');
    expect(title(at('North', 0.51, 0.42, 0.6), unsure)).toBe(
      'North changed by 0.51 points per 100 fan hours (0.42 to 0.60); others may have been as fast',
    );
    expect(title(at('North', 1.2, 0.9, 1.4), unsure)).toMatch(/^North changed fastest: 1\.2/);
    // 0.7 is below 1.2 and within 0.6 to 1.4.
    expect(title(at('North', 1.2, 0.6, 1.4), at('West', 0.6, 0.5, 0.7))).toContain('others may have been as fast');
    // Grain that took water up changed, too: −1.2 is as fast as 1.2.
    expect(title(at('North', 1.2, 0.9, 1.4), at('West', -1.1, -1.3, -0.9))).toContain('others may have been as fast');
  });

  it('has a row for start to end and for the line, months apart, and a reason where there is no number', () => {
    const section = ratesSection([north, reviewOf('South', null)], units);
    expect(section.table?.rows.map((row) => row.period)).toEqual([
      'Start to end',
      'Line through all days',
      'Start to end',
    ]);
    expect(section.table?.rows[2].rate).toEqual({ value: null, why: 'No log tells what fan F1 did.' });
    const [months] = section.tables ?? [];
    expect(months.folded).toBe('on screen');
    expect(months.rows.slice(0, 2).map((row) => row.period)).toEqual(['Oct 2024', 'Nov 2024']);
    expect(months.rows[1].kwh).toMatchObject({ value: null, why: ZERO });
    expect(section.notes).toContain('North: A note.');
  });

  it('keeps the row of a bin of whose fans one has no log: days, but no hours of the bin', () => {
    const { table } = ratesSection(
      [reviewOf('South', { season: null, line: null, months: [], days, notes: [], why: null })],
      units,
    );
    expect(table?.rows).toHaveLength(1);
    expect(table?.rows[0].hours).toEqual({ value: null, why: 'No log tells what fan F1 did.' });
  });

  it('says so where nothing is known', () => {
    expect(ratesSection([reviewOf('South', null)], units)).toMatchObject({
      lead: expect.stringMatching(/^Can’t tell/),
      figures: [],
    });
    expect(ratesSection([], units).lead).toMatch(/^Can’t tell/);
  });
});
