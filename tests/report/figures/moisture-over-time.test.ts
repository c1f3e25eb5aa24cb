import { expect, it } from 'vitest';
import { moistureOverTime } from '../../../src/report/figures/moisture-over-time.ts';
import { Units } from '../../../src/report/units.ts';

it('tells in its text alternative the finding of its title, and the days’ own means as such', () => {
  const day = (i: number, mean: number) => ({ dayMs: i * 86_400_000, mean, low: mean, high: mean, stillAir: true });
  const { alt } = moistureOverTime(
    {
      id: 'over-time',
      title: 'The mean went from 16.4 % (15.8 to 17.1) to 12.9 % (12.3 to 13.5)',
      days: [day(0, 0.162), day(1, 0.15), day(2, 0.129)],
      fanDays: [],
      start: null,
      end: null,
      target: null,
    },
    new Units('us', 'USD', 'America/Chicago'),
  );
  // The first day may lie before the day from which the season's points are told.
  expect(alt).toMatch(/^The mean went from 16\.4 % \(15\.8 to 17\.1\) to 12\.9 % \(12\.3 to 13\.5\)\. /);
  expect(alt).toContain('from 16.2 % on the first of 3 days to 12.9 % on the last');
});
