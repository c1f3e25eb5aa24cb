import { expect, it } from 'vitest';
import { type Estimate, estimate } from '../../src/base/estimate.ts';
import { hoursApartNotes } from '../../src/notebook/compare-hours-apart.ts';
import type { Compared } from '../../src/notebook/compare-words.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const bin = (paid: Estimate, own: Estimate, measure = 'costPerBushelPoint') =>
  ({
    review: { bin: { name: 'North' }, rates: { season: { hoursPerPoint: own } } },
    beside: { measure, factors: { hours: paid } },
  }) as unknown as Compared;

it('a bin whose fans ran while it was filled: both numbers of hours for a point are told, and which is which', () => {
  const paid = estimate(179, 157, 229);
  const own = estimate(141, 124, 181);
  expect(hoursApartNotes([bin(paid, own)], units)).toEqual([
    'North: all fan hours that were paid come to 179 h (157 to 229) for a point; between the two moistures a point took 141 h (124 to 181) (see Moisture).',
  ]);
  expect(hoursApartNotes([bin(own, own), bin(paid, own, 'costPerBushel')], units)).toEqual([]);
});
