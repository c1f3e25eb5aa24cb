import { expect, it } from 'vitest';
import { monthEndsWithin } from '../../../scripts/sweep/month-ends.ts';
import { zoneOf } from '../../../src/base/zone.ts';

const ZONE = zoneOf('America/Chicago');
/** Noon in Chicago, near enough. */
const at = (day: string) => Date.parse(`${day}T18:00:00Z`);
const run = (from: string, to: string) => ({ startMs: at(from), endMs: at(to) });

it('are the month ends that all runs have in them', () => {
  // Wheat from August on, corn from 12 October on, beans sold on 11 March.
  const runs = [run('2024-08-16', '2025-05-15'), run('2024-10-12', '2025-05-15'), run('2024-10-03', '2025-03-11')];
  expect(monthEndsWithin(runs, ZONE)).toEqual(['10-31', '11-30', '12-31', '01-31', '02-28']);
});

it('are six at most, none where no run holds one, and 28 February in leap years', () => {
  expect(monthEndsWithin([run('2024-09-30', '2025-08-01')], ZONE)).toEqual([
    ...['09-30', '10-31', '11-30', '12-31', '01-31', '02-28'],
  ]);
  expect(monthEndsWithin([run('2024-10-02', '2024-10-30')], ZONE)).toEqual([]);
  expect(monthEndsWithin([], ZONE)).toEqual([]);
  expect(monthEndsWithin([run('2024-02-10', '2024-03-20')], ZONE)).toEqual(['02-28']);
  // Noon of the last day is no whole day.
  expect(monthEndsWithin([run('2024-10-02', '2024-10-31')], ZONE)).toEqual([]);
});
