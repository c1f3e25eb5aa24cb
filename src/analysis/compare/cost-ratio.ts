import { type Estimate, withheld } from '../../base/estimate.ts';
import type { CostRatio, FactorRatio } from './comparison.ts';
import { costOf, energyOf, FACTOR_OF } from './cost-factors.ts';
import type { CostParts, UnsureParts } from './cost-parts.ts';
import { spreadOf, spreadOfPositive } from './spread.ts';

/**
 * A bin's cost over another's, and what the ratio is the product of. A factor's share is the logarithm of its ratio over
 * that of the cost's: exact, in no order, and the shares add up to 1; one that goes the other way is negative.
 *
 * @source  ang-2005: logarithmic shares of a product's change
 */
export function costRatio(own: UnsureParts, against: UnsureParts, againstId: string, sameCrop: boolean): CostRatio {
  const both = [own, against];
  const ratioOf = (of: (parts: CostParts) => number) => (a: CostParts, b: CostParts) => of(a) / of(b);
  const times = spreadOfPositive(both, ratioOf(costOf));
  const sharable = sameCrop && apart(times);
  const noShare = sameCrop
    ? 'The two costs cannot be told apart, so there is no difference to share out.'
    : 'The bins hold different crops, so their difference is not shared out.';
  const factor = (of: (parts: CostParts) => number): FactorRatio => {
    const ratio = ratioOf(of);
    return {
      times: spreadOfPositive(both, ratio),
      share: sharable
        ? spreadOf(both, (a, b) => Math.log(ratio(a, b)) / Math.log(ratioOf(costOf)(a, b)))
        : withheld(noShare),
    };
  };
  return {
    againstId,
    sameCrop,
    times,
    energy: factor(energyOf),
    factors: {
      price: factor(FACTOR_OF.price),
      charges: factor(FACTOR_OF.charges),
      power: factor(FACTOR_OF.power),
      hours: factor(FACTOR_OF.hours),
    },
  };
}

/** Does the interval of a ratio leave 1 out? */
export function apart({ interval }: Estimate): boolean {
  return interval !== null && (interval[0] > 1 || interval[1] < 1);
}
