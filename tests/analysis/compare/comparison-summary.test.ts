import { expect, it } from 'vitest';
import { compareBins } from '../../../src/analysis/compare/compare-bins.ts';
import { COMPARISON_SHAPE } from '../../../src/analysis/compare/comparison-shape.ts';
import { comparisonSummary } from '../../../src/analysis/compare/comparison-summary.ts';
import type { SeasonReview } from '../../../src/analysis/types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { exampleInput } from '../../report/example-review.ts';
import { exact, madeBin } from './made-bin.ts';

const { loaded, review } = exampleInput();
const bins = [
  madeBin({ id: 'A', unitCost: estimate(0.03, 0.028, 0.032) }),
  madeBin({ id: 'B', cost: exact(1800), unitCost: estimate(0.06, 0.056, 0.064) }),
  madeBin({ id: 'N', points: withheld('No sensor.'), unitCost: withheld('No sensor.') }),
];
const season = { ...loaded.season, bins: bins.map((one) => one.bin) };
const whole: SeasonReview = { ...review, bins, compared: compareBins({ ...loaded, season }, bins) };

it('keeps its schema, and tells places, factors and the ratio worked by hand', () => {
  for (const { bin } of bins) expect(COMPARISON_SHAPE.safeParse(comparisonSummary(whole, bin.id)).success).toBe(true);
  const dear = comparisonSummary(whole, 'B');
  // 500 USD for 5000 kWh in 500 h of 10,000 bushels for 3 points, 1800 USD in all; A paid 900 for the same.
  expect(dear).toMatchObject({
    rank: { best: 2, worst: 2, of: 2 },
    pricePerKwh: 0.1,
    chargesOverEnergy: 3.6,
    kwPerBushel: 0.001,
    fanHours: 166.6667,
    against: {
      bin: 'A',
      times: 2,
      price: { times: 1, share: 0 },
      charges: { times: 2, share: 1 },
      power: { times: 1 },
    },
  });
  expect(comparisonSummary(whole, 'A').against).toBeNull();
  expect(comparisonSummary(whole, 'A').why).toContain('cheapest');
});

it('says why where there is nothing to tell, also where comparing broke', () => {
  expect(comparisonSummary(whole, 'N')).toMatchObject({ rank: null, pricePerKwh: null, why: 'No sensor.' });
  const broken = comparisonSummary({ ...whole, compared: undefined }, 'A');
  expect(COMPARISON_SHAPE.safeParse(broken).success).toBe(true);
  expect(broken).toMatchObject({ measure: null, rank: null, why: 'The bins could not be compared.' });
});
