import { expect, it } from 'vitest';
import { ranOnCost } from '../../../src/analysis/fronts/front-cost.ts';
import { seasonFront } from '../../../src/analysis/fronts/season-front.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { campaignOf, sensorOf } from '../../notebook/campaign-of.ts';
import { exampleInput } from '../../report/example-review.ts';

const example = exampleInput().review.bins[0];
// Through after 40 of 100 fan hours: 60 ran on (54 to 66).
const campaigns = [campaignOf([sensorOf('C1', 1, 1, 10), sensorOf('C1', 2, 3, 40)])];
const review = {
  ...example,
  fronts: { campaigns, why: null },
  fan: { ...example.fan, hours: estimate(400, 400, 400), energyCost: estimate(200, 180, 220) },
};

it('takes the hours that ran on at the mean energy cost of a fan hour', () => {
  // 200 over 400 fan hours are 0.50 an hour: 60 h cost 30; at the least 54 × 0.45, at the most 66 × 0.55.
  expect(ranOnCost(seasonFront(review))).toEqual({
    value: 30,
    interval: [expect.closeTo(24.3, 9), expect.closeTo(36.3, 9)],
    why: null,
  });
});

it('is withheld with the reason of what lacks', () => {
  const free = { ...review, fan: { ...review.fan, energyCost: withheld('No tariff.') } };
  expect(ranOnCost(seasonFront(free))).toMatchObject({ value: null, why: 'No tariff.' });
  const idle = { ...review, fan: { ...review.fan, hours: estimate(0, 0, 0) } };
  expect(ranOnCost(seasonFront(idle)).value).toBeNull();
  const none = { ...review, fronts: { campaigns: [], why: 'No cable.' } };
  expect(ranOnCost(seasonFront(none)).value).toBeNull();
});
