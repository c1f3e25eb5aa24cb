import { describe, expect, it } from 'vitest';
import { daysByYear } from '../../../src/report/figures/days-by-year.ts';
import { Units } from '../../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const done = (year: number, iso: string | null) => ({ year, doneMs: iso === null ? null : Date.parse(iso) });
const size = (narrow: boolean) => ({ width: narrow ? 360 : 900, narrow, idPrefix: 'x' });
const figure = daysByYear(
  {
    id: 'years',
    title: 'First in 2017',
    what: 'target was reached',
    groups: [
      {
        name: 'North',
        rows: [
          {
            name: 'Humidity limit',
            // 29 November of a leap year and of another lie above each other; midnight belongs to the day before.
            years: [
              done(2016, '2016-11-30T06:00:00Z'),
              done(2017, '2017-11-29T20:00:00Z'),
              done(2018, '2019-01-05T20:00:00Z'),
              done(2019, null),
            ],
          },
        ],
      },
    ],
    notShown: null,
  },
  units,
);

const xOf = (svg: string) => [...svg.matchAll(/<circle [^>]*cx="([\d.]+)"/g)].map(([, x]) => Number(x));

describe('daysByYear', () => {
  it('lays years on one calendar, past New Year too', () => {
    for (const narrow of [false, true]) {
      const xs = xOf(figure.draw(size(narrow)));
      const [first, second, third] = xs;
      expect(xs).toHaveLength(3);
      expect(second).toBe(first);
      expect(third).toBeGreaterThan(second);
    }
  });

  it('says years that were not done beside the name, and every day in words', () => {
    expect(figure.draw(size(false))).toContain('Humidity limit (not in 2019)');
    expect(figure.alt).toBe('Humidity limit: 2016 29 Nov 2016, 2017 29 Nov 2017, 2018 5 Jan 2019, 2019 not.');
    expect(figure.draw(size(true))).not.toContain('2001');
  });
});
