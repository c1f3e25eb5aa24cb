import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../../src/analysis/types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { binSaid } from '../../../src/notebook/year-end/bin-words.ts';
import { exampleInput } from '../../report/example-review.ts';

const { review, units } = exampleInput();
const [first] = review.bins;

/** A bin whose points cost 2 cents each, removed or added. */
function ran(goal: 'dry' | 'condition', points: number): BinReview {
  const [removed, added] = [estimate(0.02, 0.01, 0.03), withheld('The fans were run to add moisture to the grain.')];
  return {
    ...first,
    bin: { ...first.bin, goal },
    moisture: { ...first.moisture, pointsRemoved: estimate(points, points - 0.5, points + 0.5) },
    unitCosts: {
      ...first.unitCosts,
      perBushelPoint: goal === 'dry' ? removed : added,
      perBushelPointAdded: goal === 'dry' ? added : removed,
    },
  };
}

describe('one bin of the year-end report in words', () => {
  it('tells the cost of a point added as that: the table beside it withholds the cost of a point removed', () => {
    expect(binSaid(ran('condition', -2.5), units)).toMatch(
      /It took up 2\.5 points \(2\.0 to 3\.0\), at 0\.020 USD a bushel-point \(0\.010 to 0\.030\) added\.$/,
    );
    expect(binSaid(ran('dry', 2.5), units)).toMatch(
      /It lost 2\.5 points \(2\.0 to 3\.0\), at 0\.020 USD a bushel-point \(0\.010 to 0\.030\)\.$/,
    );
  });
});
