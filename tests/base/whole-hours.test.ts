import { expect, it } from 'vitest';
import { wholeHours } from '../../src/base/whole-hours.ts';

it.each([
  [1, '1 hour'],
  [0.6, '1 hour'],
  [1.49, '1 hour'],
  [0, '0 hours'],
  [2389.6, '2,390 hours'],
])('%s h are said as %s', (hours, said) => {
  expect(wholeHours(hours)).toBe(said);
});
